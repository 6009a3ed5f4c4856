import type { z } from 'zod';

/** One thing a screen or command can ask of the desk. */
export interface Operation<Input extends z.ZodType = z.ZodType, Output extends z.ZodType = z.ZodType> {
  readonly kind: 'read' | 'write';
  readonly input: Input;
  readonly output: Output;
  /** Writes say whether Undo takes them back, or why not. */
  readonly undoable?: true | string;
}

export function read<Input extends z.ZodType, Output extends z.ZodType>(input: Input, output: Output) {
  return { kind: 'read', input, output } as const satisfies Operation<Input, Output>;
}

export function write<Input extends z.ZodType, Output extends z.ZodType>(input: Input, output: Output, undoable: true | string) {
  return { kind: 'write', input, output, undoable } as const satisfies Operation<Input, Output>;
}
