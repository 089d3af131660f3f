import fc from 'fast-check';

/** Parts of strings that mean something to HTML, XML, CSS, terminals or the eye. */
export const HOSTILE: readonly string[] = [
  '<script>alert(1)</script>',
  '</style><script>',
  '</title>',
  '</svg>',
  '<img src=x onerror=alert(1)>',
  '"',
  "'",
  '" onload="x',
  ']]>',
  '<![CDATA[',
  '<!--',
  '--',
  '-->',
  '&lt;',
  '&#0;',
  '&amp',
  '<?xml ?>',
  '\u202e',
  '\u200f',
  '\u2066',
  '\u05d0\u05d1',
  '\u0000',
  '\u001b[2J',
  '\u0085',
  '\u2028',
  '\ufffe',
  '\uffff',
  '\ud800',
  '\r\n',
  'javascript:alert(1)',
  'url(http://x)',
  '*/',
  '\\',
  '`\u0024{x}`',
];

/** Any text, most of it meant to harm. */
export const anyText: fc.Arbitrary<string> = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc.array(fc.constantFrom(...HOSTILE), { maxLength: 6 }).map((parts) => parts.join('')),
);
