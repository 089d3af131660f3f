export function resolve(specifier, context, next) {
  if (specifier !== 'node-hid') return next(specifier, context);
  return { url: new URL('./node-hid.cjs', import.meta.url).href, shortCircuit: true };
}
