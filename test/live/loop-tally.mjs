// What the reading loops share: counting by the counter in the reports, lateness, frames, and the answer on stdout.

export class LoopTally {
  #devices;
  #results;
  #cpu = process.cpuUsage();

  constructor() {
    this.#devices = JSON.parse(process.argv[2] ?? '[]');
    this.#results = this.#devices.map(() => ({ received: 0, last: -1, lost: 0, latenessUs: [] }));
    const frames = JSON.parse(process.argv[3] ?? 'null');
    if (frames !== null) setInterval(() => block(frames.blockMs), frames.everyMs);
  }

  get devices() {
    return this.#devices;
  }

  /** Call for each report; the bytes are read at once. */
  take(device, atUs, report) {
    const { counter, sentUsAt } = this.#devices[device];
    const result = this.#results[device];
    const modulus = 2 ** (8 * counter.bytes);
    const n = report.readUIntLE(counter.at, counter.bytes);
    result.lost += (n - result.last - 1 + modulus) % modulus;
    result.last = n;
    result.received += 1;
    result.latenessUs.push((atUs - report.readUInt32LE(sentUsAt)) % 2 ** 32);
  }

  /** Says that reading has begun, and answers when stdin ends. */
  run() {
    this.#cpu = process.cpuUsage();
    process.stdout.write('reading\n');
    process.stdin.resume();
    process.stdin.on('end', () => {
      const { user, system } = process.cpuUsage(this.#cpu);
      const answer = JSON.stringify({ results: this.#results, cpuUs: user + system });
      process.stdout.write(answer, () => process.exit(0));
    });
  }
}

export function nowUs() {
  const [seconds, nanoseconds] = process.hrtime();
  return seconds * 1e6 + nanoseconds / 1e3;
}

function block(ms) {
  const untilUs = nowUs() + 1000 * ms;
  while (nowUs() < untilUs);
}
