'use strict';
// Cephes (Moshier), compiled to WebAssembly. Its CommonJS entry compiles at once; its ES module entry
// compiles later, and every caller would have to wait. This one line picks the first, both under Node
// and when the keeper is bundled, so that the functions of this room stay plain and synchronous.
module.exports = require('cephes');
