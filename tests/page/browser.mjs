// Debian's Chromium through playwright-core, or one plain line that says why not (exit 77).
import { existsSync } from 'node:fs';

export function skip(why) {
	console.log(`skipped: ${why}`);
	process.exit(77);
}

export async function browser(...words) {
	const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium';
	if (!existsSync(executablePath))
		skip('chromium is not installed: run config/setup --test');
	let library;
	try {
		library = await import('playwright-core');
	} catch {
		skip('playwright-core is not installed: run \'npm ci\' in tests/');
	}
	return library.chromium.launch({ executablePath, args: ['--no-sandbox', '--autoplay-policy=no-user-gesture-required', ...words] });
}
