// What is seen from the door: a discrepancy, or what is owed to the patient of a case that has ended.
import { el, put } from './dom.js';
import { shape } from './shapes.js';
import { running } from './clocks.js';
import { searching, tally } from './sheet.js';
import { digitName, digitWords, list, plain, t } from './words.js';

const missing = (i) => i.missing > 0 && ['here', 'on', 'off'].includes(i.place);

// '1 finger tourniquet, green, M (1 of 2)': of equal items together, because nobody can tell them apart.
function itemsText(items, all, number) {
	const names = [...new Set(items.map((i) => i.name))];
	return list(names.map((name) => {
		const n = items.filter((i) => i.name === name).reduce((k, i) => k + number(i), 0);
		const of = all.filter((i) => i.name === name).reduce((k, i) => k + (i.pieces || 1), 0);
		return of > n ? t('one-of', { item: name, n, all: of }) : n > 1 ? t('times', { item: name, n }) : name;
	}));
}

const ORDER = ['patient-called-back', 'digit-seen-bare', 'ward-told'];

// The case that has waited longest: what is to be done first, on which digits, what else, and how many cases wait besides.
function owed(view) {
	const first = view?.after?.[0]?.case, of = (view?.after ?? []).filter((a) => a.case === first);
	return first && {
		of: first, at: of[0].at, what: ORDER.find((w) => of.some((a) => a.what === w)), left: ORDER.flatMap((w) => of.filter((a) => a.what === w)),
		digits: of.map((a) => a.digit).filter(Boolean).map(digitName), more: new Set(view.after.map((a) => a.case)).size - 1,
	};
}

const deed = (o) => t(`after-${o.what}`, { n: o.digits.length || 1 });

// While a case is open it is one line above what comes next.
export function owedLine(view) {
	const o = view?.case && owed(view);
	return o ? t('after-open', { case: o.of, words: o.digits.length && o.what === 'digit-seen-bare' ? `${deed(o)}: ${list(o.digits)}` : deed(o) }) : '';
}

// Each digit is looked at, and entered, by itself: a box for each.
function tick(a) {
	if (a.what !== 'digit-seen-bare')
		return t(`owed-${a.what}`);
	return a.digit ? t('owed-look-at', { digit: a.digit }) : t('owed-look');
}

function shoutOwed(box, o) {
	put(box, el('p', { class: 'word deed' }, deed(o)), ...(o.digits.length ? [el('p', { class: 'digits' }, list(o.digits))] : []),
		el('p', { class: 'rest' }, t('after-case', { case: o.of, time: o.at }), ...o.left.map((a) => el('span', {}, shape('open'), tick(a))), o.more ? t('after-more', { n: o.more }) : ''));
}

// In the search this alone is read from the door: minutes stand in it.
function stillOn(view, passed_ms) {
	const on = searching(view) ? running(view, passed_ms) : [];
	return on.length && plain('still-on', view.awake, { list: list(on.map((d) => t('told-digit', { digit: d.number, words: digitWords(d, passed_ms) }))) });
}

export function drawShout(box, view, passed_ms) {
	const open = !!view?.case?.discrepancy, o = view?.case ? null : owed(view);
	box.hidden = !open && !o;
	if (o)
		return void shoutOwed(box, o);
	if (!open)
		return void put(box);
	const awake = view.awake, lost = view.items.filter(missing), extra = view.items.filter((i) => i.place === 'extra');
	const counted = view.items.filter((i) => ['here', 'on', 'off', 'accounted'].includes(i.place));
	const facts = [
		stillOn(view, passed_ms),
		lost.length && plain('not-found', awake, { list: itemsText(lost, counted, (i) => i.missing) }),
		extra.length && t('extra-found', { list: itemsText(extra, extra, (i) => i.pieces || 1) }),
		view.may_be_on?.length && plain('may-be-on', awake, { list: list(view.may_be_on.map(digitName)) }),
	].filter(Boolean);
	put(box, el('p', { class: 'word' }, el('span', {}, plain('discrepancy', awake)), el('span', { class: 'stop' }, plain('stop-closing', awake))), ...(facts.length ? facts : [t('counted-again', tally(view))]).map((f) => el('p', {}, f)));
}
