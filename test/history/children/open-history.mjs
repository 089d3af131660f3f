// Opens a history, tries to write to it and prints what it is or the problem it met, as one line of JSON.
// Arguments: folder of the compiled program, data folder.
const [, , compiled, folder] = process.argv;
const { openHistory } = await import(`${compiled}/history/open-history.js`);

try {
  const history = openHistory(folder);
  history.startPractice({
    driver: 'Kim',
    startedAt: { utcMs: 0, zone: 'UTC', offsetMin: 0 },
    source: 'virtual',
    foot: 'left',
    footwear: 'socks',
    calibrationId: 'c',
    sensor: 'force',
    seed: null,
  });
  console.log(JSON.stringify({ label: history.label }));
} catch (error) {
  const { name, message, where, next } = error;
  console.log(JSON.stringify({ problem: { name, message, where, next } }));
}
