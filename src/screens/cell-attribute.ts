const DEFAULT_COLOUR = 0x1ff;

/** The terminal library's attribute of a cell: style bits, ink, and always the terminal's own background. */
export function attributeOf(ink: number, style: number): number {
  return (style << 18) | ((ink & DEFAULT_COLOUR) << 9) | DEFAULT_COLOUR;
}
