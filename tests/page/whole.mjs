// A whole station behind the page: the daemon, its board and the command, in a folder of their own.
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { skip } from './browser.mjs';
import { bin } from './station.mjs';
import { sleep } from './told.mjs';

export const source = join(dirname(fileURLToPath(import.meta.url)), '../..');

export class Whole {
	log = '';

	constructor(settings) {
		for (const program of ['bandtallyd', 'bandtally', 'bandtally-board', 'bandtally-print'])
			if (!existsSync(join(bin, program)))
				skip(`${program} is not built in ${bin}`);
		this.folder = mkdtempSync(join(tmpdir(), 'board-'));
		this.env = { ...process.env, PATH: `${bin}:${process.env.PATH}` };
		writeFileSync(join(this.folder, 'station.ini'), settings);
	}

	async start() {
		this.log = '';
		this.daemon = spawn(join(bin, 'bandtallyd'), ['--data', this.folder], { stdio: ['ignore', 'ignore', 'pipe'], env: this.env });
		this.daemon.stderr.on('data', (d) => { this.log += d; });
		this.gone = new Promise((done) => this.daemon.on('exit', done));
		for (let i = 0; i < 100; i++) {
			await sleep(100);
			this.address = /http:\/\/127\.0\.0\.1:\d+\//.exec(this.log)?.[0];
			if (this.address)
				return this.address;
		}
		throw new Error(`no board in 10 s: ${this.log}`);
	}

	tool(...words) {
		return execFileSync(join(bin, 'bandtally'), ['--data', this.folder, ...words], { encoding: 'utf8', env: this.env });
	}

	scan(code, room = 1) {
		return spawnSync(join(bin, 'bandtally'), ['--data', this.folder, 'scan', '--room', `${room}`, code], { encoding: 'utf8', env: this.env });
	}

	async stop() {
		this.daemon.kill('SIGTERM');
		await this.gone;
	}

	remove() {
		rmSync(this.folder, { recursive: true });
	}
}
