import { Problem } from '../problem.ts';
import { nearest } from '../profile/nearest.ts';
import { CATALOGUE, commandsOf } from './catalogue.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { commandHelp, groupHelp } from './help.ts';
import { HELP_TOPICS, type HelpTopic } from './help-topics.ts';

/** Explains a command as its `--help` does, or one of the topics that no single command owns. */
export const command: Command = {
  name: 'help',
  summary: 'explain a command or a topic: `ebbline help` lists the topics',
  positionals: '[TOPIC|COMMAND|json COMMAND]',
  options: {},
  examples: [
    'ebbline help',
    'ebbline help score',
    'ebbline help rig setup',
    'ebbline help json progress',
  ],
  run: explain,
};

async function explain({ positionals }: CommandInput, context: CommandContext): Promise<number> {
  const wanted = positionals.join(' ');
  if (wanted === '') {
    context.out(topicList());
    return 0;
  }
  const [first, ...others] = positionals;
  if (first === 'json' && others.length > 0) {
    context.out(await answerText(others.join(' ')));
    return 0;
  }
  const topic = HELP_TOPICS.find(({ name }) => name === wanted);
  if (topic !== undefined) {
    context.out(await topicText(topic));
    return 0;
  }
  const entry = CATALOGUE.find(({ name }) => name === wanted);
  const group = commandsOf(wanted);
  if (entry !== undefined) context.out(commandHelp(await entry.load()));
  else if (group.length > 0) context.out(groupHelp(wanted, group));
  else throw unknown(wanted);
  return 0;
}

/** The schema alone, for a file. */
async function answerText(name: string): Promise<string> {
  const { ANSWERING, answerSchemaOf } = await import('./answers/answers.ts');
  const schema = await answerSchemaOf(name);
  if (schema !== null) return `${JSON.stringify(schema, null, 2)}\n`;
  const near = nearest(name, ANSWERING);
  throw new Problem(`${JSON.stringify(name)} is no command with --json`, {
    where: 'help json',
    next: `${near === null ? '' : `Did you mean ${near}? `}\`ebbline help json\` lists them.`,
    exitCode: 2,
  });
}

const topicText = async ({ name, about, text }: HelpTopic): Promise<string> =>
  `${name}: ${about}\n\n${(await text()).join('\n')}\n`;

function topicList(): string {
  const width = Math.max(...HELP_TOPICS.map(({ name }) => name.length));
  return [
    'topics:',
    ...HELP_TOPICS.map(({ name, about }) => `  ${name.padEnd(width)}  ${about}`),
    '',
    '`ebbline help TOPIC` explains one; `ebbline help COMMAND` is',
    '`ebbline COMMAND --help`; `ebbline --help` lists commands.',
    '',
  ].join('\n');
}

function unknown(wanted: string): Problem {
  const names = [...HELP_TOPICS.map(({ name }) => name), ...CATALOGUE.map(({ name }) => name)];
  const near = nearest(wanted, names);
  const close = near === null ? '' : `Did you mean ${near}? `;
  return new Problem(`there is no help on ${JSON.stringify(wanted)}`, {
    next: `${close}\`ebbline help\` lists topics, \`ebbline --help\` commands.`,
    exitCode: 2,
  });
}
