// Typing a code where the scanner is broken. What is typed is marked 'keyed' on the sheet and the slip. It needs a ticket:
// without one the same key says how to get it.
import { $, el, say } from './dom.js';
import { judge } from './check.js';
import { t, verdict } from './words.js';

const ANSWER_MS = 4000;
const rows = ['1234567890', 'ABCDEFGHIJ', 'KLMNOPQRST', 'UVWXYZ'];
let open = null; // { room, free } while the dialog shows

export function setUpKeyed(state) {
	const box = $('keyed'), field = el('input', { id: 'code', type: 'text', autocomplete: 'off', autocapitalize: 'characters', spellcheck: 'false', maxlength: 128, 'aria-describedby': 'judged', 'aria-label': 'Code' });
	const news = el('p', { id: 'news' }); // what was scanned while this lies over the board
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
	const command = el('b', { class: 'whole' });
	const closed = el('form', { method: 'dialog' },
		el('h2', { id: 'keyed-title' }, 'Typing is closed: ask for a new ticket'), key('Close', () => box.close(), 'close'),
		el('p', {}, 'Whoever looks after the station gets it with ', command, ' and opens the address in this browser. It works once, and within a minute.'),
		el('p', {}, 'Until then scan the codes. Where no scanner reads them, count by hand on the paper sheet.'));

	function fill() {
		say(command, `bandtally board --room ${open.room}${location.protocol === 'https:' ? ' --elsewhere' : ''}`);
		const now = state.typing === 'yes' ? form : closed;
		if (box.firstChild !== now)
			box.replaceChildren(now);
		now.querySelector('h2').after(news);
	}

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
		say(news, '');
		look();
		fill();
		box.showModal();
		if (box.firstChild === form)
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
			say(judged, 'Sent. Waiting for the station.');
			judged.className = 'part';
			const r = await fetch('/keyed', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify({ room: open.room, code }), signal: AbortSignal.timeout(ANSWER_MS) });
			if (!r.ok)
				return failed((await r.text()).trim());
			answered(await r.json());
		} catch (why) {
			failed(`${why.name === 'TimeoutError' ? 'The station did not answer.' : 'The station cannot be reached.'} Count by hand on the paper sheet.`);
		}
	});

	function answered(reply) {
		say(judged, reply.said);
		judged.className = reply.verdict === 'refused' ? 'wrong' : 'right';
		if (reply.verdict === 'refused')
			return;
		field.value = '';
		setTimeout(() => field.value || box.close(), 1500);
	}
	return {
		allowed() { box.open && fill(); }, // whether codes may be typed has changed
		scanned(reply, awake) { box.open && say(news, `${t('reply', { verdict: verdict(reply.verdict, awake) })} ${reply.said}`); },
	};
}
