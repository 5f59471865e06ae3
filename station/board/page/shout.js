// What is seen from the door: in a discrepancy its one word, what is not found, and where it may be.
import { el, put } from './dom.js';
import { tally } from './sheet.js';
import { list, plain, t } from './words.js';

const missing = (i) => i.missing > 0 && ['here', 'on', 'off'].includes(i.place);

// '1 finger tourniquet, green, M (1 of 2)': of equal items together, because nobody can tell them apart.
function itemsText(items, all, number) {
	const names = [...new Set(items.map((i) => i.name))];
	return list(names.map((name) => {
		const n = items.filter((i) => i.name === name).reduce((k, i) => k + number(i), 0);
		const of = all.filter((i) => i.name === name).reduce((k, i) => k + (i.pieces || 1), 0);
		return of > n ? t('one-of', { item: name, n, all: of }) : n > 1 ? `${n} × ${name}` : name;
	}));
}

export function drawShout(box, view) {
	const open = !!view?.case?.discrepancy;
	box.hidden = !open;
	if (!open)
		return void put(box);
	const awake = view.awake, lost = view.items.filter(missing), extra = view.items.filter((i) => i.place === 'extra');
	const counted = view.items.filter((i) => ['here', 'on', 'off', 'accounted'].includes(i.place));
	const facts = [
		lost.length && plain('not-found', awake, { items: itemsText(lost, counted, (i) => i.missing) }),
		extra.length && t('extra-found', { items: itemsText(extra, extra, (i) => i.pieces || 1) }),
		view.may_be_on?.length && plain('may-be-on', awake, { digits: list(view.may_be_on) }),
	].filter(Boolean);
	put(box, el('p', { class: 'word' }, plain('discrepancy', awake)), ...(facts.length ? facts : [t('counted-again', tally(view))]).map((f) => el('p', {}, f)));
}
