import { clearLine, createInterface, cursorTo, type Interface } from 'node:readline';

export interface Streams {
  input: NodeJS.ReadableStream;
  output: NodeJS.WritableStream;
}

/** Reads lines and prints text; messages are printed above the line that is being typed. */
export interface Terminal {
  /** A person sits at it: then there is a prompt. */
  interactive: boolean;
  print: (text: string) => void;
  /** Sets the prompt; null = none while a line is being handled. */
  prompt: (words: string | null) => void;
  lines: () => AsyncIterable<string>;
  close: () => void;
}

const isTty = (stream: object): boolean => 'isTTY' in stream && stream.isTTY === true;

/** Colour only on a terminal, and not if the reader asked for none (https://no-color.org). */
export const wantsColor = (output: object, noColor: string | undefined): boolean =>
  isTty(output) && (noColor ?? '') === '';

export const terminalOver = ({ input, output }: Streams): Terminal => {
  const interactive = isTty(output);
  let reader: Interface | null = null;
  let prompt: string | null = null;

  const showPrompt = (): void => {
    if (!interactive || reader === null || prompt === null) return;
    reader.setPrompt(prompt);
    reader.prompt(true);
  };

  return {
    interactive,
    print: (text) => {
      if (interactive && prompt !== null) {
        cursorTo(output, 0);
        clearLine(output, 0);
      }
      output.write(`${text}\n`);
      showPrompt();
    },
    prompt: (words) => {
      prompt = words;
      showPrompt();
    },
    lines: () => {
      reader = createInterface({ input, output, terminal: interactive });
      return reader;
    },
    close: () => {
      prompt = null;
      reader?.close();
      reader = null;
    },
  };
};
