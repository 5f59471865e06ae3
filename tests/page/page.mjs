// What the browser's tests share: the station, the browser, the screens, and showing a scene.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { browser } from './browser.mjs';
import { bin, Station } from './station.mjs';
import { scenes, status } from './scenes.mjs';

export const b = await browser();
export const pictures = process.env.BANDTALLY_PICTURES ?? join(bin, '../page');
mkdirSync(pictures, { recursive: true });
export const station = await Station.start();
station.beat();
station.tell({ status: status() });
station.view(scenes.idle);

export const walls = { '1920x1080': { width: 1920, height: 1080 }, '1280x800': { width: 1280, height: 800 }, '1024x600': { width: 1024, height: 600 }, '3840x2160': { width: 3840, height: 2160 } };
export const others = { phone: { width: 390, height: 844 }, 'zoom-200': { width: 960, height: 540 }, 'zoom-200-small': { width: 512, height: 300 } };

// A page of room 1 that shows a case-free room, whatever stood there before; opened with a ticket, or without at `path`.
export async function open(viewport = walls['1920x1080'], options = {}, path = '') {
	station.view(scenes.idle);
	const page = await b.newPage({ viewport, ...options });
	page.faults = [];
	await page.addInitScript(() => {
		const now = performance.now.bind(performance);
		window.later_ms = 0;
		performance.now = () => now() + window.later_ms;
	});
	page.on('pageerror', (e) => page.faults.push(String(e)));
	page.on('console', (m) => m.type() === 'error' && page.faults.push(m.text()));
	await page.goto(path ? station.address + path : station.ticket());
	await page.waitForFunction(() => document.documentElement.dataset.trouble === 'no');
	return page;
}
// Lets `ms` pass on the page's clock at once, and waits for the station's next beat there.
export async function later(page, ms) {
	await page.evaluate((passed) => {
		window.later_ms += passed;
		dispatchEvent(new Event('resize'));
	}, ms);
	await page.waitForFunction(() => document.documentElement.dataset.trouble === 'no');
}
export const text = (page, id) => page.evaluate((i) => document.getElementById(i).innerText.replace(/\s+/g, ' ').trim(), id);
export async function show(page, v, wait = 120) {
	station.view(v);
	const step = v.cards.some((c) => c.number === 60) && v.search.find((s) => s.state === 'open');
	await page.waitForFunction((next) => document.getElementById('next').textContent.includes(next), v.distrust || (step ? step.text : v.next.replace(/\.$/, '')));
	await page.waitForTimeout(wait);
}

