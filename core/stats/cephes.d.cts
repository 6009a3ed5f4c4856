export * from 'cephes';
