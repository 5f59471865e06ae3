// What the room's camera sees, on the station's own screen: beside the count and over nothing, and gone with the last picture.
// None is kept: the canvas is emptied.
import { $, el, say } from './dom.js';
import { t } from './words.js';

const GONE_MS = 2500, MOST_MS = 21000; // without a further picture; and where the station forgot to end it
let first = 0, last = 0, turn = 0, board = null;

// Of a code that was read the outline is whole, of one that is only seen it is broken.
function outline(g, [left, top, right, bottom, told], w, h) {
	g.setLineDash(told ? [] : [w / 60, w / 90]);
	for (const [colour, width] of [['#fff', w / 50], [told ? '#111417' : '#0072b2', w / 100]]) {
		Object.assign(g, { strokeStyle: colour, lineWidth: width });
		g.strokeRect(left * w / 1000, top * h / 1000, (right - left) * w / 1000, (bottom - top) * h / 1000);
	}
}

const box = el('section', { id: 'camera', 'aria-labelledby': 'camera-is', hidden: true },
	el('h2', { id: 'camera-is' }), el('canvas', { id: 'seen', width: 0, height: 0 }), el('p', { id: 'seen-how', role: 'status' }));
const style = el('link', { rel: 'stylesheet', href: '/camera.css' });
const styled = new Promise((done) => { style.addEventListener('load', done); });
document.head.append(style);
$('middle').prepend(box);

function show(shown) {
	box.hidden = !shown;
	document.documentElement.dataset.camera = shown ? 'yes' : 'no';
}

function empty() {
	first = 0;
	turn++;
	$('seen').width = 0;
	show(false);
}

async function draw({ jpeg, codes }) {
	await styled;
	const mine = ++turn, c = $('seen'), g = c.getContext('2d');
	const image = await createImageBitmap(new Blob([Uint8Array.from(atob(jpeg), (b) => b.charCodeAt(0))]));
	if (mine !== turn)
		return;
	const w = c.width = image.width * 3, h = c.height = image.height * 3;
	g.drawImage(image, 0, 0, w, h);
	codes.forEach((code) => outline(g, code, w, h));
	say($('camera-is'), t('camera-is'));
	say($('seen-how'), t(codes.some((code) => code[4]) ? 'camera-read' : codes.length ? 'camera-hold' : 'camera-none'));
	show(true);
}

// The board draws itself anew where it has to make room for it, or has that again.
export async function picture(p, state, redraw) {
	const was = box.hidden;
	board = { state, redraw };
	if (p.jpeg) {
		last = performance.now();
		first ||= last;
		await draw(p).catch(() => {}); // one that is damaged is passed over
	} else {
		empty();
	}
	makeRoom(was);
}

function makeRoom(was) {
	if (was === box.hidden)
		return;
	board.state.views++;
	board.redraw();
}

function look() {
	const now = performance.now(), was = box.hidden, bad = document.documentElement.dataset.trouble === 'yes';
	if (first && (bad || now - last > GONE_MS || now - first > MOST_MS))
		empty();
	makeRoom(was);
}
setInterval(look, 250);
addEventListener('resize', look);
