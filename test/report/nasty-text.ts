import fc from 'fast-check';

const pieces = [
  '<script>alert(1)</script>', '<img src=x onerror=alert(1)>', '</svg><script>', '</text>', '<!--', '-->', ']]>', '<?php', '&lt;b&gt;', '&#60;', '&', '"', "'", '`', '```', '\n', '\r\n', '\n\n# Heading\n',
  '|', '\\|', '| a | b |\n| - | - |', '[link](http://example.com)', '![picture](http://example.com/x.png)', '[x]: http://example.com', 'http://example.com', 'https://example.com/?a=b&c=d', 'www.example.com',
  'someone@example.com', 'mailto:a@b.co', 'javascript:alert(1)', '*bold*', '__strong__', '~~gone~~', '# heading', '- item', '1. item', '> quote', '    code', '---', '===', '[^1]', '[ ] task', '$x$', '{{x}}',
  '\u202Eevil', '\u2066x\u2069', '\u0000', '\u001B[31m', '\u2028', '\uFEFF', '\uD800', '\uFFFE', '\\', '\t', '  ', ' ', 'a', 'Öl', '油', '👩‍🎨', '.', '!', '(', ')', '[', ']', '<', '>', '_', '*', '+', '-', '=', ':',
] as const;

/** Text that tries to break out of Markdown, HTML, SVG or a table cell, mixed with ordinary letters. */
export const nastyText = fc.array(fc.oneof({ weight: 4, arbitrary: fc.constantFrom(...pieces) }, { weight: 1, arbitrary: fc.string({ unit: 'grapheme', maxLength: 6 }) }), { minLength: 1, maxLength: 8 }).map((parts) => parts.join(''));
