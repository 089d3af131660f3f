import { type Document, parseDocument } from 'yaml';
import { changedData, isSameData } from './changed-data.ts';
import type { ProfileChange } from './profile-change.ts';
import { spliced } from './spliced.ts';

/**
 * The text of a YAML profile after changes of its data. All that a change does not touch stays byte for byte: comments,
 * blank lines, the order of keys, how numbers are written. Where the layout is too unusual for that, the document is
 * written anew with its comments and its order of keys.
 *
 * @param text a profile that reads without problems
 */
export function changedText(text: string, changes: readonly ProfileChange[]): string {
  return changes.reduce(afterOne, text);
}

function afterOne(text: string, change: ProfileChange): string {
  const document = parsed(text);
  const wanted = changedData(document.toJS(), change);
  const next = spliced(text, document, change);
  return next !== null && says(next, wanted) ? next : rewritten(document, change);
}

function parsed(text: string): Document {
  return parseDocument(text, { version: '1.2', stringKeys: true, logLevel: 'error' });
}

function says(text: string, wanted: unknown): boolean {
  const document = parsed(text);
  return document.errors.length === 0 && isSameData(document.toJS(), wanted);
}

function rewritten(document: Document, change: ProfileChange): string {
  const { path } = change;
  if (change.kind === 'set') document.setIn(path, change.value);
  else if (change.kind === 'remove') document.deleteIn(path);
  else if (change.kind === 'add-key')
    document.setIn([...path, change.key], document.createNode(change.value));
  else {
    const list = document.getIn(path) as { items: unknown[] };
    list.items.splice(change.index, 0, document.createNode(change.value));
  }
  return document.toString({ lineWidth: 100 });
}
