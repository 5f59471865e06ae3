// Reminders that nobody answers, in rooms other than this one, until something is scanned there; and tourniquets of a case
// that is suspended in this one, until it goes on: a band of its own.
import { el, put } from './dom.js';
import { shape } from './shapes.js';
import { t } from './words.js';

// What is to be heard of them: of `room` itself each reminder, of others what nobody answers.
export const remindsHere = (list, room) => list?.some((e) => e.room === room && e.reminded);
export const nobodyAnswers = (list, room) => list?.some((e) => e.room !== room && e.nobody);

export function drawElsewhere(box, list = []) {
	box.hidden = !list.length;
	put(box, ...list.map((e) => el('p', {}, shape('reminder'), el('span', {}, ...(e.nobody ? [el('b', {}, `${t('nobody-answers')} `)] : []), e.text))));
}
