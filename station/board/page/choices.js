// Light and sound: a dark room, and whether the board is heard. Kept in this browser only, and not as a cookie.
import { $, el } from './dom.js';
import { hasNoVoice, names, sound, wake } from './sound.js';
import { t } from './words.js';

const KEY = 'light';

function show(light) {
	if (light)
		document.documentElement.dataset.light = light;
	else
		delete document.documentElement.dataset.light;
}

export function setUpChoices(state) {
	const box = $('choices'), button = (text, act) => {
		const b = el('button', { type: 'button', class: 'key' }, text);
		b.addEventListener('click', act);
		return b;
	};
	const choose = (light) => () => {
		show(light);
		try {
			localStorage.setItem(KEY, light);
		} catch { /* a browser that keeps nothing still changes now */ }
	};
	try {
		show(localStorage.getItem(KEY) ?? '');
	} catch { /* as above */ }
	const fill = () => box.replaceChildren(el('form', { method: 'dialog' },
		el('h2', { id: 'choices-title' }, t('light-and-sound')), el('button', { class: 'key close' }, t('close')),
		el('p', {}, t('light')), el('div', { class: 'row' }, button(t('light-room'), choose('light')), button(t('dark-room'), choose('dark')), button(t('as-the-screen'), choose(''))),
		el('p', {}, t('hear-a-sound')), el('div', { class: 'row' }, ...names.map((n) => button(t(`sound-${n}`), async () => { await wake(); sound(n, state.view); }))),
		el('p', { id: 'voice' }, !state.view?.sound?.speech ? '' : t(hasNoVoice() ? 'no-voice' : 'spoken'))));
	$('settings').addEventListener('click', () => {
		fill();
		box.showModal();
	});
	document.addEventListener('pointerdown', () => void wake(), { once: true });
}
