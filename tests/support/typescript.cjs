// tests: the compiler, required: Node looks through what it imports for names, which takes longer than to load it.

const typescript = require("typescript");
module.exports = typescript;
