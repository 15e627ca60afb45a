import type { Command, Option } from 'commander';

export interface CompletableOption {
  flag: string;
  short?: string;
  about: string;
  /** What follows it: one of these words, a file, something else, or nothing. */
  takes: readonly string[] | 'file' | 'text' | undefined;
}

/** A command as a shell completes it. */
export interface Completable {
  /** `check`, `drill mark`. */
  name: string;
  about: string;
  options: CompletableOption[];
  /** Words that may follow: those of commands within it, or of its first argument. */
  words: { word: string; about: string }[];
  /** Whether a file may follow. */
  file: boolean;
}

function takesOf({ argChoices, flags, required, optional }: Option): CompletableOption['takes'] {
  if (argChoices) return argChoices;
  if (!required && !optional) return undefined;
  return /<file>/.test(flags) ? 'file' : 'text';
}

const optionsOf = (command: Command): CompletableOption[] =>
  command.options
    .filter(({ hidden, long }) => !hidden && long)
    .map((option) => ({
      flag: option.long as string,
      short: option.short,
      about: option.description,
      takes: takesOf(option),
    }));

/** Every command, those within commands behind it, each with the options that all have. */
export function completable(
  program: Command,
  words: Record<string, readonly string[]>,
): { program: Completable; commands: Completable[] } {
  const common = optionsOf(program);
  const help: CompletableOption = { flag: '--help', short: '-h', about: 'print this help', takes: undefined };
  const one = (command: Command, name: string): Completable => ({
    name,
    about: command.summary() || command.description(),
    options: [...optionsOf(command), ...(command === program ? [] : common), help],
    words: [
      ...command.commands.map((inner) => ({ word: inner.name(), about: inner.summary() })),
      ...(words[name] ?? []).map((word) => ({ word, about: '' })),
    ],
    file: command.registeredArguments.some((argument) => /layout|file/.test(argument.name())),
  });
  const commands = program.commands.flatMap((command) => [
    one(command, command.name()),
    ...command.commands.map((inner) => one(inner, `${command.name()} ${inner.name()}`)),
  ]);
  return { program: one(program, ''), commands };
}
