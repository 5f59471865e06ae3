// Light and sound: a dark room, and whether the board is heard. Kept in this browser only, and not as a cookie.
import { $, el, say } from './dom.js';
import { hasNoVoice, names, sound, wake } from './sound.js';

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
	box.replaceChildren(el('form', { method: 'dialog' },
		el('h2', { id: 'choices-title' }, 'Light and sound'), el('button', { class: 'key close' }, 'Close'),
		el('p', {}, 'Light'), el('div', { class: 'row' }, button('Light room', choose('light')), button('Dark room', choose('dark')), button('As the screen', choose(''))),
		el('p', {}, 'Hear a sound'), el('div', { class: 'row' }, ...names.map((n) => button(n, async () => { await wake(); sound(n, state.view); })))));
	const voice = el('p', { id: 'voice' });
	box.firstChild.append(voice);
	$('settings').addEventListener('click', () => {
		say(voice, !state.view?.sound?.speech ? '' : hasNoVoice() ? 'Replies are to be spoken, but this browser has no voice.' : 'Replies are spoken, unless the patient is awake.');
		box.showModal();
	});
	document.addEventListener('pointerdown', () => void wake(), { once: true });
}
