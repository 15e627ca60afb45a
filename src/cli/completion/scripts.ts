import type { Completable, CompletableOption } from './completable.js';

interface Commands {
  program: Completable;
  commands: Completable[];
}

/** Whose words are quoted within single quotes by every one of the three shells. */
const quoted = (text: string): string => `'${text.replaceAll("'", '')}'`;

const flagsOf = ({ options }: Completable): string[] =>
  options.flatMap(({ flag, short }) => (short ? [flag, short] : [flag]));

/** Options by what follows them, each once: one name means one thing in every command. */
function taking({ program, commands }: Commands): CompletableOption[] {
  const all = [program, ...commands].flatMap(({ options }) => options);
  return [...new Map(all.map((option) => [option.flag, option])).values()].filter(({ takes }) => takes);
}

/** Finds which command stands on the line: the first of its words, and the one within it. */
function whichCommand({ commands }: Commands, words: string): string {
  const single = commands.filter(({ name }) => !name.includes(' ')).map(({ name }) => name);
  const within = commands.filter(({ name }) => name.includes(' ')).map(({ name }) => name.split(' '));
  return [
    `  for word in ${words}; do`,
    '    case "$command $word" in',
    `      ${single.map((name) => `" ${name}"`).join('|')}) command="$word" ;;`,
    ...within.map(([outer, inner]) => `      "${outer} ${inner}") command="${outer} ${inner}" ;;`),
    '    esac',
    '  done',
  ].join('\n');
}

const byCommand = ({ program, commands }: Commands, words: (command: Completable) => string[]): string =>
  [program, ...commands]
    .map((command) => `    ${quoted(command.name)}) offer=${quoted(words(command).join(' '))} ;;`)
    .join('\n');

const wordsOf = ({ words }: Completable): string[] => words.map(({ word }) => word);

/** Where a command takes no word of its own, the shell offers files. */
function bash(all: Commands): string {
  const values = taking(all).map(({ flag, takes }) =>
    Array.isArray(takes)
      ? `    ${flag}) COMPREPLY=($(compgen -W ${quoted(takes.join(' '))} -- "$current")); return ;;`
      : `    ${flag}) return ;;`,
  );
  return `# pumpyoke completion for bash
_pumpyoke() {
  local current="\${COMP_WORDS[COMP_CWORD]}" previous="\${COMP_WORDS[COMP_CWORD-1]}" command="" word offer
  COMPREPLY=()
${whichCommand(all, `"\${COMP_WORDS[@]:1:COMP_CWORD-1}"`)}
  case "$previous" in
${values.join('\n')}
  esac
  if [[ "$current" == -* ]]; then
    case "$command" in
${byCommand(all, flagsOf)}
    esac
  else
    case "$command" in
${byCommand(all, wordsOf)}
    esac
  fi
  COMPREPLY=($(compgen -W "$offer" -- "$current"))
}
complete -o bashdefault -o default -F _pumpyoke pumpyoke
`;
}

function zsh(all: Commands): string {
  const values = taking(all).map(({ flag, takes }) =>
    Array.isArray(takes)
      ? `    ${flag}) compadd -- ${takes.join(' ')}; return ;;`
      : `    ${flag}) _files; return ;;`,
  );
  return `#compdef pumpyoke
_pumpyoke() {
  local current="\${words[CURRENT]}" previous="\${words[CURRENT-1]}" command="" word
  local -a line=("\${(@)words[2,CURRENT-1]}")
${whichCommand(all, `"\${line[@]}"`)}
  case "$previous" in
${values.join('\n')}
  esac
  local offer
  if [[ "$current" == -* ]]; then
    case "$command" in
${byCommand(all, flagsOf)}
    esac
  else
    case "$command" in
${byCommand(all, wordsOf)}
    esac
  fi
  if [[ -n "$offer" ]]; then compadd -- \${=offer}; else _files; fi
}
if [[ "$funcstack[1]" == _pumpyoke ]]; then _pumpyoke "$@"; else compdef _pumpyoke pumpyoke; fi
`;
}

function fishOption(option: CompletableOption, when: string): string {
  const { flag, short, about, takes } = option;
  const value = Array.isArray(takes)
    ? `-x -a ${quoted(takes.join(' '))}`
    : takes === 'file'
      ? '-r -F'
      : takes === 'text'
        ? '-x'
        : '';
  const letter = short ? ` -s ${short.slice(1)}` : '';
  return `complete -c pumpyoke -n ${quoted(when)} -l ${flag.slice(2)}${letter} ${value} -d ${quoted(about)}`;
}

function fish({ program, commands }: Commands): string {
  const lines = ['# pumpyoke completion for fish', 'complete -c pumpyoke -n __fish_use_subcommand -f'];
  for (const { word, about } of program.words)
    lines.push(`complete -c pumpyoke -n __fish_use_subcommand -a ${word} -d ${quoted(about)}`);
  for (const option of program.options) lines.push(fishOption(option, '__fish_use_subcommand'));
  for (const command of commands) {
    const seen = command.name
      .split(' ')
      .map((word) => `__fish_seen_subcommand_from ${word}`)
      .join('; and ');
    if (!command.file) lines.push(`complete -c pumpyoke -n ${quoted(seen)} -f`);
    for (const { word, about } of command.words)
      lines.push(`complete -c pumpyoke -n ${quoted(seen)} -a ${word} -d ${quoted(about)}`);
    for (const option of command.options) lines.push(fishOption(option, seen));
  }
  return `${lines.join('\n')}\n`;
}

/** A script by which a shell completes the commands, their options and the words that these take. */
export function scriptFor(shell: 'bash' | 'zsh' | 'fish', commands: Commands): string {
  switch (shell) {
    case 'bash':
      return bash(commands);
    case 'zsh':
      return zsh(commands);
    case 'fish':
      return fish(commands);
  }
}
