// The minutes of each digit that has a tourniquet on: the largest figures on the wall while one is on. The longest first.
import { el, put } from './dom.js';
import { shape } from './shapes.js';
import { digitName, doubt, ran_min, runs, t } from './words.js';

export const running = (view, passed_ms) => (view?.digits ?? []).filter(runs).sort((a, b) => ran_min(b, passed_ms) - ran_min(a, passed_ms));

function clock(d, passed_ms) {
	const how = doubt(d);
	return el('div', { class: `clock ${d.state}${d.reminded ? ' reminded' : ''}` },
		el('p', { class: 'time' }, ...(d.reminded ? [shape('reminder')] : []), el('b', { class: 'number' }, `${ran_min(d, passed_ms)}`), el('span', { class: 'unit' }, t('min'))),
		...(how ? [el('p', { class: 'how' }, t(`how${how}`))] : []), el('p', { class: 'whose' }, digitName(d.number)));
}

// How large they can be: by how many there are, and how many figures the longest has.
export function drawClocks(box, view, passed_ms) {
	const list = running(view, passed_ms), figures = String(list.length ? ran_min(list[0], passed_ms) : '').length;
	box.dataset.size = !list.length ? 'none' : list.length === 1 ? (figures > 3 ? 'two' : 'one') : list.length === 2 ? (figures > 3 ? 'three' : 'two') : list.length === 3 && figures < 4 ? 'three' : 'more';
	put(box, ...list.map((d) => clock(d, passed_ms)));
	return list;
}
