// Typing a code where the scanner is broken, marked 'keyed'. Without a ticket the same key says how to get one.
import { $, el, say } from './dom.js';
import { judge } from './check.js';
import { reply, t } from './words.js';

const ANSWER_MS = 4000;
const rows = ['1234567890', 'ABCDEFGHIJ', 'KLMNOPQRST', 'UVWXYZ'];
let open = null; // { room, free } while the dialog shows

export function setUpKeyed(state) {
	const box = $('keyed'), field = el('input', { id: 'code', type: 'text', autocomplete: 'off', autocapitalize: 'characters', spellcheck: 'false', maxlength: 128, 'aria-describedby': 'judged' });
	const news = el('p', { id: 'news' }); // what was scanned while this lies over the board
	const judged = el('p', { id: 'judged', role: 'status' }), send = el('button', { type: 'submit', class: 'send' });
	const key = (text, act, cls = '') => {
		const b = el('button', { type: 'button', class: `key ${cls}` }, text);
		b.addEventListener('click', act);
		return b;
	};
	const back = key('', () => { field.value = field.value.slice(0, -1); look(); }, 'wide'), type = (c) => { field.value += c; look(); };
	const keys = el('div', { class: 'keys' }, ...rows.flatMap((r) => [...r].map((c) => key(c, () => type(c)))),
		key('−', () => type('-')), key('/', () => type('/')),
		back);
	const form = el('form', { method: 'dialog' }), closed = el('form', { method: 'dialog' }), command = el('b', { class: 'whole' });
	const head = (name) => [el('h2', { id: 'keyed-title' }, t(name)), key(t('close'), () => box.close(), 'close')];

	function word() {
		const [before, after] = t('closed-how', { code: '\n' }).split('\n');
		back.textContent = t('back');
		send.textContent = t('enter');
		field.setAttribute('aria-label', t('code'));
		form.replaceChildren(...head('type-a-code'), el('p', { class: 'hint' }, t('marked-keyed')), field, judged, keys, send);
		closed.replaceChildren(...head('closed'), el('p', {}, before, command, after), el('p', {}, t('closed-until')));
	}

	function fill() {
		say(command, `bandtally board --room ${open.room}${location.protocol === 'https:' ? ' --elsewhere' : ''}`);
		const now = state.typing === 'yes' ? form : closed;
		if (box.firstChild !== now)
			box.replaceChildren(now);
		now.querySelector('h2').after(news);
	}

	function look() {
		const j = judge(field.value, open?.free, state.view?.cards);
		say(judged, t(j.name, j.values));
		judged.className = j.state;
		send.disabled = j.state === 'empty' || j.state === 'wrong' || j.state === 'part';
	}
	field.addEventListener('input', look);
	$('type').addEventListener('click', () => {
		open = { room: state.view?.room.number, free: state.view?.question === 'incident' };
		field.value = '';
		say(news, '');
		word();
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
			say(judged, t('is-sent'));
			judged.className = 'part';
			const r = await fetch('/keyed', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify({ room: open.room, code }), signal: AbortSignal.timeout(ANSWER_MS) });
			if (!r.ok)
				return failed((await r.text()).trim());
			answered(await r.json());
		} catch (why) {
			failed(t(why.name === 'TimeoutError' ? 'no-answer' : 'not-reached'));
		}
	});

	function answered(r) {
		say(judged, r.said);
		judged.className = r.verdict === 'refused' ? 'wrong' : 'right';
		if (r.verdict === 'refused')
			return;
		field.value = '';
		setTimeout(() => field.value || box.close(), 1500);
	}
	return {
		allowed() { box.open && fill(); }, // whether codes may be typed has changed
		scanned(last, awake) { box.open && say(news, `${reply(last.verdict, awake)} ${last.said}`); },
	};
}
