// What does not fit on the wall is shown by turns, whole parts at a time, and says so.
import { el } from './dom.js';

const TURN_MS = 6000;

export function turn(box, flows) {
	box.querySelector('h2 > .turns')?.remove();
	const parts = [...box.querySelectorAll(':scope > .group:not(.pinned), :scope > .steps > li')];
	parts.forEach((p) => { p.hidden = false; p.classList.remove('leads'); });
	box.classList.remove('brief');
	const fits = () => flows || !parts.length || box.scrollHeight <= box.clientHeight + 1;
	if (fits())
		return;
	// While the final count goes on, what is not yet accounted for must not take turns with what is.
	box.classList.toggle('brief', box.dataset.counting === 'yes');
	if (fits())
		return;
	box.classList.remove('brief');
	const sign = box.querySelector('li.here, li.missing') ? el('span') : el('span', { class: 'turns' }, '1/2');
	box.querySelector('h2').append(sign);
	parts.forEach((p) => p.classList.add('leads')); // as high as it can be on its page
	const room = box.clientHeight - parts[0].offsetTop, pages = [[]];
	let used = 0;
	for (const p of parts) {
		const high = p.offsetHeight;
		if (used + high > room && pages.at(-1).length) {
			pages.push([]);
			used = 0;
		}
		pages.at(-1).push(p);
		used += high;
	}
	// The step that is due, or the point that holds, stays in view; a plain sheet goes by turns.
	const due = pages.findIndex((page) => page.some((p) => p.matches('li.here, li.missing')));
	const i = due >= 0 ? due : Math.floor(performance.now() / TURN_MS) % pages.length;
	parts.forEach((p) => { p.hidden = !pages[i].includes(p); p.classList.toggle('leads', p === pages[i][0]); });
	sign.textContent = pages.length > 1 && due < 0 ? `${i + 1}/${pages.length}` : '';
}
