// The lists of the stores' page, each drawn from what the station said. Nothing is worked out here but how it is put.
import { el } from './dom.js';
import { t } from './words.js';

const two = (n, digits = 2) => String(n).padStart(digits, '0');
export const day = (yyyymmdd) => (yyyymmdd ? `${two(Math.floor(yyyymmdd / 10000), 4)}-${two(Math.floor(yyyymmdd / 100) % 100)}-${two(yyyymmdd % 100)}` : '-');
const shown = (text) => text || '-';
const named = (x) => [el('b', {}, x.name), ' ', el('span', { class: 'key' }, x.key)];

// heads: names of sentences, of which a '#' in front says that it is a number; rows: lists of cells, a cell text or nodes.
export function table(heads, rows, none) {
	if (!rows.length)
		return el('p', {}, none);
	const number = heads.map((h) => h[0] === '#');
	return el('table', {}, el('thead', {}, el('tr', {}, ...heads.map((h, i) => el('th', { scope: 'col', class: number[i] ? 'number' : '' }, t(`st-head-${h.replace('#', '')}`))))),
		el('tbody', {}, ...rows.map((row) => el('tr', {}, ...row.map((cell, i) => el('td', { class: number[i] ? 'number' : '', 'data-head': t(`st-head-${heads[i].replace('#', '')}`) }, ...[cell].flat()))))));
}

const when = (days) => (days > 0 ? t('st-days', { n: days }) : days < 0 ? t('st-days-ago', { n: -days }) : t('st-day-today'));
const ORDER = ['expired', 'confirm', 'read-back', 'box-again', 'returned', 'missing', 'low', 'expires-30', 'expires-90', 'unaccounted'];

export function tasks(s) {
	const all = [...s.today,
		...s.low.map((x) => ({ what: 'low', ...x, n: t('st-of-minimum', { n: x.usable, most: x.minimum }) })),
		...s.missing.map((x) => ({ what: 'missing', ...x, when: t('st-case', { case: x.case }) }))];
	all.sort((a, b) => ORDER.indexOf(a.what) - ORDER.indexOf(b.what));
	return table(['what', 'line', 'lot', '#many', 'when'], all.map((x) => [t(`st-todo-${x.what}`), named(x), shown(x.lot), `${x.n}`, x.when ?? (/^expire/.test(x.what) ? when(x.days) : '')]), t('st-today-nothing'));
}

const rooms = (list) => list.map((r) => t('st-in-room', { room: r.name, n: r.packs })).join(', ');
const dated = (l) => el('span', { class: 'day' }, day(l.expiry));
const why = (l) => (l.why ? [dated(l), el('b', { class: 'why' }, t(`st-why-${l.why}`))] : dated(l));
const each = (l, names) => names.map((name) => `${l[name]}`);

export function lots(list) {
	return table(['line', 'lot', 'expiry', '#shelf', '#waits', 'rooms', '#received', '#labelled', '#issued', '#opened', '#returned', '#written', '#unaccounted'],
		list.map((l) => [named(l), shown(l.lot), why(l), ...each(l, ['shelf', 'waits']), rooms(l.rooms), ...each(l, ['received', 'labelled', 'issued', 'opened', 'returned', 'written_off', 'unaccounted'])]), t('st-nothing-found'));
}

const place = (p) => [p.place, p.when && ` (${t(`st-${p.when}`)})`].filter(Boolean);

export function printings(list) {
	return table(['line', 'lot', 'expiry', 'numbers', 'open', 'place'], list.map((p) => [named(p), shown(p.lot), dated(p),
		t('st-range', { item_number: p.first, last_number: p.last }), p.open.length ? p.open.map((n) => two(n, 8)).join(', ') : t('st-read-all'), place(p)]), t('st-labels-none'));
}

export function quarantines(list) {
	return table(['line', 'lot', 'why', 'notice', '#shelf', '#waits', 'rooms', '#opened', 'near'], list.map((q) => [named(q), q.lot || t('st-all-lots'), q.why, shown(q.notice),
		...each(q, ['shelf', 'waits']), rooms(q.rooms), `${q.opened}`, q.near.join(', ')]), t('st-none'));
}

const bullets = (texts) => (texts.length ? el('ul', {}, ...texts.map((text) => el('li', {}, text))) : el('p', {}, t('st-none')));

const used = (r) => [table(['case', 'room', 'day', 'lot', '#packs', 'slip'], r.cases.map((c) => [`${c.case}`, c.name, day(c.day), shown(c.lot), `${c.packs}`, c.slip ? two(c.slip, 7) : '-']), t('st-none')),
	el('p', {}, r.told_since ? t('st-told-since', { date: day(r.told_since) }) : t('st-told-never'))];

export function recalled(of, r) {
	return [el('h3', {}, of.lot ? t('st-recall-of', { key: of.line, lot: of.lot }) : t('st-recall-line', { key: of.line })),
		el('p', {}, el('b', {}, t(r.held ? 'st-held' : 'st-not-held'))),
		el('h4', {}, t('st-open-cases')), bullets(r.open.map((c) => t('st-open-in', { case: c.case, room: c.name }))),
		el('h4', {}, t('st-head-near')), bullets(r.near),
		el('h4', {}, t('st-lies')), lots(r.stock),
		el('h4', {}, t('st-used')), ...used(r),
		el('h4', {}, t('st-silent')), bullets(r.silent.map((x) => (x.day ? t('st-silent-since', { room: x.name, date: day(x.day) }) : t('st-silent-ever', { room: x.name }))))];
}

const listed = (list) => list.map((x) => el('div', {}, t('st-listed', { item: `${x.name} (${x.key})`, n: x.n })));

export function shortfalls(list) {
	return table(['case', 'room', 'line', '#short', 'trays'], list.map((x) => [`${x.case}`, x.room, named(x), `${x.n}`, listed(x.trays)]), t('st-none'));
}

export const missed = (list) => table(['case', 'room', 'line', 'lot', '#short'], list.map((x) => [`${x.case}`, x.room, named(x), shown(x.lot), `${x.n}`]), t('st-none'));

export function cameBack(list) {
	return table(['day', 'line', 'entered', 'of', 'slip'], list.map((x) => [day(x.day), named(x), x.room, x.case ? t('st-of-case', { case: x.case }) : t('st-of-no-case'), x.slip ? two(x.slip, 7) : '-']), t('st-came-none'));
}

export const had = (key, r) => [el('p', {}, t('st-had', { key })), ...used(r)];

export const trays = (list) => table(['line', 'contents'], list.map((x) => [named(x), listed(x.contents)]), t('st-none'));

const KINDS = ['added', 'changed', 'removed', 'absent', 'stay'];

export function changes(answer, taken) {
	const column = (c) => t('st-column', { text: c.column, first: c.was, second: c.is });
	return [el('p', {}, el('b', {}, t(taken ? 'st-was-taken' : 'st-would', { n: answer.count }))),
		bullets(KINDS.map((k) => t('st-count', { words: t(`st-change-${k}`), n: answer[k] }))),
		table(['#file-line', 'change', 'line', 'columns'], answer.changes.map((c) => [c.line ? `${c.line}` : '-', t(`st-change-${c.what}`), named(c), [...c.columns.map(column), ...(c.packs ? [t('st-change-packs', { n: c.packs })] : [])].map((x) => el('div', {}, x))]), t('st-none'))];
}

