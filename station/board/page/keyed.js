// Typing a code where the scanner is broken. What is typed is marked 'keyed' on the sheet and the slip.
import { $, el, say } from './dom.js';
import { judge } from './check.js';

const ANSWER_MS = 4000;
const rows = ['1234567890', 'ABCDEFGHIJ', 'KLMNOPQRST', 'UVWXYZ'];
let open = null; // { room, free } while the dialog shows
const waiting = new Map(); // id of what was typed -> timer

export function setUpKeyed(state) {
	const box = $('keyed'), field = el('input', { id: 'code', type: 'text', autocomplete: 'off', autocapitalize: 'characters', spellcheck: 'false', maxlength: 128, 'aria-describedby': 'judged', 'aria-label': 'Code' });
	const judged = el('p', { id: 'judged', role: 'status' }), send = el('button', { type: 'submit', class: 'send' }, 'Enter');
	const key = (text, act, cls = '') => {
		const b = el('button', { type: 'button', class: `key ${cls}` }, text);
		b.addEventListener('click', act);
		return b;
	};
	const type = (c) => { field.value += c; look(); };
	const keys = el('div', { class: 'keys' }, ...rows.flatMap((r) => [...r].map((c) => key(c, () => type(c)))),
		key('−', () => type('-')), key('/', () => type('/')),
		key('Back', () => { field.value = field.value.slice(0, -1); look(); }, 'wide'));
	const form = el('form', { method: 'dialog' },
		el('h2', { id: 'keyed-title' }, 'Type a code'), key('Close', () => box.close(), 'close'),
		el('p', { class: 'hint' }, 'It is marked as keyed on sheet and slip.'), field, judged, keys, send);
	box.replaceChildren(form);

	function look() {
		const j = judge(field.value, open?.free, state.view?.cards);
		say(judged, j.text);
		judged.className = j.state;
		send.disabled = j.state === 'empty' || j.state === 'wrong' || j.state === 'part';
	}
	field.addEventListener('input', look);
	$('type').addEventListener('click', () => {
		open = { room: state.view?.room.number, free: state.view?.question === 'incident' };
		field.value = '';
		look();
		box.showModal();
		field.focus();
	});
	form.addEventListener('submit', async (e) => {
		e.preventDefault();
		look();
		if (send.disabled)
			return;
		send.disabled = true;
		const failed = (text) => { say(judged, text); judged.className = 'wrong'; };
		try {
			const code = open.free ? field.value.trim() : field.value.trim().toUpperCase();
			const r = await fetch('/keyed', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify({ room: open.room, code }) });
			if (r.status !== 202)
				return failed(await r.text());
			say(judged, 'Sent. Waiting for the station.');
			judged.className = 'part';
			waiting.set((await r.json()).id, setTimeout(() => failed('The station did not answer. Count by hand on the paper sheet.'), ANSWER_MS));
			early.forEach(answered);
		} catch {
			failed('The station cannot be reached. Count by hand on the paper sheet.');
		}
	});

	const early = []; // an answer can come before the number of what it answers
	function answered(reply) {
		if (!waiting.has(reply.id)) {
			early.splice(0, early.length - 3);
			return void (early.includes(reply) || early.push(reply));
		}
		clearTimeout(waiting.get(reply.id));
		waiting.delete(reply.id);
		say(judged, reply.said);
		judged.className = reply.verdict === 'refused' ? 'wrong' : 'right';
		if (reply.verdict === 'refused')
			return;
		field.value = '';
		setTimeout(() => waiting.size || box.close(), 1500);
	}
	return answered;
}
