// Reminders that nobody answers, in rooms other than this one: a band of its own that stands until something is scanned
// there.
import { el, put } from './dom.js';
import { shape } from './shapes.js';
import { t } from './words.js';

export function drawElsewhere(box, list = []) {
	box.hidden = !list.length;
	put(box, ...list.map((e) => el('p', {}, shape('reminder'), el('span', {}, el('b', {}, `${t('nobody-answers')} `), e.text))));
}
