// One label as the printer's program draws it, dot for dot, and as large as it will be: a screen does not know its own size, so
// a line is set to a ruler once.
import { $, el, put, say } from './dom.js';
import { ask } from './stores-ask.js';
import { t } from './words.js';

const scale = () => Number($('scale').value) / 100;
const mm = (dots, dpi) => (dots / dpi) * 25.4;

function size() {
	$('fifty').style.width = `${50 * scale()}mm`;
	for (const c of $('label-pictures').querySelectorAll('canvas')) {
		c.style.width = `${Number(c.dataset.mm) * scale()}mm`;
		localStorage.setItem('stores-scale', $('scale').value);
	}
}

export function setUpRuler() {
	$('scale').value = localStorage.getItem('stores-scale') ?? '100';
	$('scale').addEventListener('input', size);
	size();
}

async function draw(p, name) {
	const bytes = Uint8Array.from(atob(p.png), (c) => c.charCodeAt(0)), picture = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
	const words = t(name, { n: Math.round(mm(p.width, p.dpi)), most: Math.round(mm(p.height, p.dpi)) }), c = el('canvas', { width: p.width, height: p.height, role: 'img', 'aria-label': words, 'data-mm': mm(p.width, p.dpi) });
	c.getContext('2d').drawImage(picture, 0, 0);
	return el('figure', {}, c, el('figcaption', {}, words));
}

export async function showLabel(room) {
	say($('label-said'), t('st-wait'));
	$('ruler').hidden = true;
	put($('label-pictures'));
	try {
		const { pictures } = await ask(room, { do: 'preview', line: $('label-key').value.trim(), lot: $('label-lot').value.trim(), expiry: $('label-expiry').value.trim(), medium: $('label-medium').value.trim() });
		const [pack, bag] = pictures;
		$('label-pictures').replaceChildren(await draw(pack, 'st-preview-pack'), await draw(bag, 'st-preview-bag'));
		$('ruler').hidden = false;
		say($('label-said'), '');
		size();
	} catch (why) {
		say($('label-said'), why.message);
	}
}
