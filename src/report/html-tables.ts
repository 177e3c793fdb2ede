import type { Element, ElementContent } from 'hast';
import { words } from './paper.js';

const inside = (node: Element): readonly Element[] =>
  node.children.filter((child): child is Element => child.type === 'element');
const rowsOf = (node: Element): readonly Element[] => (node.tagName === 'tr' ? [node] : inside(node).flatMap(rowsOf));

/**
 * From this many columns on, a row is a card on a phone: its first cell on top, the others below it, each with the head
 * of its column.
 */
const many = 3;

/**
 * A table of the report as the page shows it: in a frame that scrolls by itself, named after the heading above it, its
 * heads told from its cells.
 */
export function pageTable(table: Element, under: string): Element {
  const heads = inside(rowsOf(table)[0] ?? table).map(words);
  const cards = heads.length >= many;
  const finished: Element = {
    ...table,
    properties: { role: 'table', ...(cards ? { className: ['many'] } : {}) },
    children: inside(table).map((group) => ({
      ...group,
      properties: { role: 'rowgroup' },
      children: inside(group).map((row) => ({
        ...row,
        properties: { role: 'row' },
        children: inside(row).map((cell, i) => finishCell(cell, i, heads[i] ?? '')),
      })),
    })),
  };
  return {
    type: 'element',
    tagName: 'div',
    properties: { className: ['wide'], role: 'region', tabIndex: 0, ariaLabel: `Table: ${under}` },
    children: [finished],
  };
}

/**
 * Heads of columns and rows say that they are; a head without words is none; dots to write on become room to write on.
 * The roles hold when a row is shown as a card.
 */
function finishCell(cell: Element, column: number, head: string): Element {
  const said = words(cell);
  const right = cell.properties['align'] === 'right' ? ['right'] : [];
  const made = (
    tagName: string,
    role: string,
    more: Element['properties'],
    children: ElementContent[] = cell.children,
  ): Element => ({ type: 'element', tagName, properties: { ...more, role }, children });
  const className = (names: readonly string[]): Element['properties'] =>
    names.length === 0 ? {} : { className: [...names] };
  if (cell.tagName === 'th')
    return said === '' ? made('td', 'cell', {}) : made('th', 'columnheader', { scope: 'col', ...className(right) });
  if (column === 0) return made('th', 'rowheader', { scope: 'row', ...className(right) });
  const named = head === '' ? {} : { dataHead: head };
  if (/^\.[. ]*$/u.test(said)) return made('td', 'cell', { ...named, className: ['blank'] }, []);
  return made('td', 'cell', { ...(said === '' ? {} : named), ...className(right) });
}
