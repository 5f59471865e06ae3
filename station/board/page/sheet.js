// The count sheet as on paper, below it each digit that has no clock above; or the search, or the sign-out, in its place.
import { el, put } from './dom.js';
import { shape } from './shapes.js';
import { digitName, digitWords, list, plain, runs, t } from './words.js';

const isMissing = (i) => i.missing > 0 && ['here', 'on', 'off'].includes(i.place);
export const counts = (i) => ['here', 'on', 'off', 'accounted'].includes(i.place);
const pieces = (i) => i.pieces || 1;
const back = (i) => (i.place === 'accounted' ? pieces(i) : i.shown ?? 0);

// The standing of a line beside its name, or '' where its columns say it all.
function standing(i, view) {
	const d = view.digits.find((x) => x.number === i.digit);
	if (isMissing(i))
		return plain('is-missing', view.awake);
	switch (i.place) {
	case 'on': return !d ? t('is-on-nowhere') : view.digits.filter(runs).length > 1 ? t('is-on', { digit: d.number }) : t('is-on-it');
	case 'off': return t('is-off'); // of equal ones nobody knows which was on which digit
	case 'extra': return t('is-extra');
	case 'isolated': return t('is-away');
	case 'returned': return t('is-returned');
	default: return '';
	}
}

const remarks = (i) => list([i.name, i.condition && t(`condition-${i.condition}`), i.unlisted && t('not-listed'), i.dropped && t('dropped'), i.added && t('added')].filter(Boolean));

// Equal lines become one with their number, as they were counted in; what needs a person first.
function lines(view) {
	const found = new Map(), first = (i) => (i.place === 'extra' ? 0 : isMissing(i) ? 1 : 2);
	for (const i of view.items.filter((x) => x.place && x.place !== 'struck')) {
		const name = remarks(i), state = standing(i, view), asked = view.asked_item === i.number;
		const open = counts(i) && i.place !== 'accounted', key = [name, state, asked, open].join('\n');
		const line = found.get(key) ?? { name, state, asked, open, first: first(i), n: 0, back: 0, counts: counts(i), kind: isMissing(i) ? 'missing' : i.place };
		line.n += pieces(i);
		line.back += counts(i) ? back(i) : 0;
		found.set(key, line);
	}
	return [...found.values()].sort((a, b) => a.first - b.first);
}

function lineNode(l, counting) {
	const none = counting || l.kind === 'missing' ? '0' : '';
	return el('tr', { class: `line ${l.kind}${l.open ? ' open' : ''}${l.asked ? ' asked pinned' : ''}${l.first < 2 ? ' pinned' : ''}`, 'aria-current': l.asked ? 'step' : undefined },
		el('th', { scope: 'row' }, ...(l.asked ? [shape('here')] : []), el('span', {}, l.name, ...(l.state ? [l.first < 2 ? ' ' : ' · ', el('b', { class: 'state' }, l.state)] : []))),
		el('td', {}, l.counts || l.kind === 'extra' ? `${l.n}` : '–'), el('td', {}, !l.counts ? '–' : l.back > 0 ? `${l.back}` : none));
}

// Of digits without a running clock: the others are above.
function digitNodes(view) {
	return view.digits.filter((d) => !runs(d)).map((d) => {
		const w = digitWords(d, 0);
		return w && el('tr', { class: 'of-digit' }, el('th', { scope: 'row', colspan: 3 }, `${digitName(d.number)} `, el('b', {}, w)));
	}).filter(Boolean);
}

export function tally(view) {
	const items = view.items.filter(counts), sum = (f) => items.reduce((n, i) => n + f(i), 0);
	return { all: sum(pieces), n: sum(back) };
}
export function summary(view) {
	const { n, all } = tally(view);
	return all ? t('of-accounted', { n, all }) : t('nothing-in-yet');
}

function sheetNodes(view) {
	const counting = view.case.final !== 'none', all = lines(view);
	if (!all.length && !digitNodes(view).length)
		return [el('p', { class: 'empty' }, t('nothing-in'))];
	return [el('table', {}, el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, el('span', { class: 'name' }, t('sheet'))), el('th', { scope: 'col' }, t('counted-in')), el('th', { scope: 'col' }, t('accounted-for')))),
		el('tbody', {}, ...all.map((l) => lineNode(l, counting)), ...digitNodes(view)))];
}

const answered = (s) => s.state !== 'open';
export const stepsOf = (view) => view.search.filter(answered).length;

function stepNode(s, i, at) {
	const state = answered(s) ? s.state : i === at ? 'here' : 'open', words = { done: t('step-done'), 'not-done': t('step-not-done') }[state];
	return el('li', { class: state, 'aria-current': i === at ? 'step' : undefined }, shape(state), el('span', {}, t('step', { n: i + 1, step: s.text })), ...(words ? [el('b', {}, words)] : []));
}

export function searchSummary(view) {
	const n = (state) => view.search.filter((s) => s.state === state).length;
	return list(['done', 'not-done', 'open'].map((state) => [state, n(state)]).filter(([, k]) => k)
		.map(([state, k]) => t(`steps-${state === 'open' ? 'to-go' : state}`, { n: k })));
}

function searchNodes(view) {
	const at = stepsOf(view);
	const boxes = view.search.map((s, i) => el('span', {}, shape(answered(s) ? s.state : i === at ? 'here' : 'open'), `${i + 1}`));
	return [el('h2', { 'aria-label': searchSummary(view) }, el('span', { class: 'tally', 'aria-hidden': 'true' }, ...boxes)), el('ol', { class: 'steps' }, ...view.search.map((s, i) => stepNode(s, i, at)))];
}

function pointNodes(view) {
	const yes = view.case.points_yes, no = view.case.point_no;
	return [
		el('h2', {}, el('span', {}, t('sign-out')), el('span', {}, summary(view))),
		el('ol', { class: 'steps' }, ...view.points.map((text, i) => {
			const state = i + 1 === no ? 'missing' : i < yes ? 'done' : i === yes && view.question === 'point' ? 'here' : 'open';
			const words = { missing: t('point-no'), done: t('point-yes') }[state];
			return el('li', { class: state }, shape(state), el('span', {}, t('step', { n: i + 1, step: text })), ...(words ? [el('b', {}, words)] : []));
		})),
	];
}

export const signingOut = (view) =>
	!!view?.case && (view.case.sign_out || view.question === 'point' || view.case.point_no > 0);
// While lines are counted again, they stand there and the steps wait.
export const searching = (view) => (view?.search?.length ?? 0) > 0 && !view.asked_item;

export function drawSheet(box, view) {
	box.dataset.counting = view?.case && view.case.final !== 'none' ? 'yes' : 'no';
	if (!view?.case)
		put(box, el('h2', {}, t(view ? 'no-case' : 'nothing-known')), el('p', { class: 'intended' }, t('intended')));
	else if (signingOut(view))
		put(box, ...pointNodes(view));
	else if (searching(view))
		put(box, ...searchNodes(view));
	else
		put(box, ...sheetNodes(view));
}
