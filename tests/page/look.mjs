// Pictures of every state for a person to look at: node tests/page/look.mjs FOLDER [scene…]
import { mkdirSync } from 'node:fs';
import { browser } from './browser.mjs';
import { Station } from './station.mjs';
import { scenes, status } from './scenes.mjs';

export const screens = {
	'1920x1080': { width: 1920, height: 1080 }, '1280x800': { width: 1280, height: 800 },
	'1024x600': { width: 1024, height: 600 }, '3840x2160': { width: 3840, height: 2160 }, phone: { width: 390, height: 844 }, 'zoom-200': { width: 960, height: 540 },
};
const folder = process.argv[2] ?? 'build/page', only = process.argv.slice(3);
mkdirSync(folder, { recursive: true });
const station = await Station.start(), b = await browser();
station.beat();
station.tell({ status: status() });
for (const [screen, viewport] of Object.entries(screens).filter(([s]) => !process.env.SCREEN || process.env.SCREEN.split(',').includes(s)))
	for (const light of (process.env.LIGHT ?? 'light,dark').split(',')) {
		const page = await b.newPage({ viewport, colorScheme: light, deviceScaleFactor: screen === 'phone' || screen === 'zoom-200' ? 2 : 1 });
		page.on('console', (m) => m.type() === 'error' && console.log(`${screen}: ${m.text()}`));
		page.on('pageerror', (e) => console.log(`${screen}: ${e}`));
		await page.goto(station.address);
		for (const [name, view] of Object.entries(scenes)) {
			if (only.length && !only.includes(name))
				continue;
			if (light === 'dark' && !only.length && !['on', 'discrepancy', 'question', 'distrust', 'sign-out'].includes(name))
				continue;
			station.view(view);
			await page.waitForTimeout(500);
			await page.screenshot({ path: `${folder}/${name}-${screen}-${light}.png`, fullPage: screen === 'phone' || screen === 'zoom-200' });
		}
		await page.close();
	}
await b.close();
await station.end();
