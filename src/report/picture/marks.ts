import { element, type Markup } from '../markup/markup.ts';

const RADIUS = 4;

export function dot(x: number, y: number, look: string): Markup {
  return element('circle', { class: look, cx: x, cy: y, r: RADIUS });
}

export function cross(x: number, y: number, look: string): Markup {
  const [left, top] = [(x - RADIUS).toFixed(1), (y - RADIUS).toFixed(1)];
  const side = 2 * RADIUS;
  return element('path', {
    class: look,
    d: `M${left},${top}l${side},${side}m0,${-side}l${-side},${side}`,
  });
}

export function diamond(x: number, y: number, look: string): Markup {
  const half = 1.5 * RADIUS;
  const start = `M${x.toFixed(1)},${(y - half).toFixed(1)}`;
  return element('path', {
    class: look,
    d: `${start}l${half},${half}l${-half},${half}l${-half},${-half}z`,
  });
}

export function ring(x: number, y: number): Markup {
  return element('circle', { class: 'ring', cx: x, cy: y, r: 2.2 * RADIUS });
}
