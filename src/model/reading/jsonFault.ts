// Finds the first fault of a text that should be JSON (RFC 8259), with its line and column: browsers say it in words of their own, and not
// all of them where. It reads the text once, without building anything, and follows any depth.

/** What is wrong: what should stand there and does not, or what stands there and must not. */
export type JsonFaultKind =
  | 'value'
  | 'key'
  | 'colon'
  | 'comma'
  | 'end'
  | 'break'
  | 'escape'
  | 'number'
  | 'more';

export interface JsonFault {
  /** Characters before the fault. */
  readonly position: number;
  /** From 1; a line ends in LF. */
  readonly line: number;
  readonly column: number;
  readonly kind: JsonFaultKind;
}

const SPACE = /[ \t\n\r]*/y;
/** The characters of a string up to its end, its next escape or what may not stand there: all from the space on but " and \. */
const PLAIN = /[ !#-[\]-\uffff]*/y;
const ESCAPE = /["\\/bfnrt]|u[0-9a-fA-F]{4}/y;
const DIGITS = /[0-9]*/y;

/** The first fault; null where the text is JSON. */
export function jsonFault(text: string): JsonFault | null {
  const reader = new Reader(text);
  const kind = reader.document();
  if (kind === null) return null;
  const { at } = reader;
  const before = text.slice(0, at);
  const start = before.lastIndexOf('\n') + 1;
  return { position: at, line: before.split('\n').length, column: at - start + 1, kind };
}

type Found = JsonFaultKind | null;

class Reader {
  /** Characters that are read. After a fault, those before it. */
  at = 0;

  constructor(private readonly text: string) {}

  /** Reads one value and all that is in it; a list of the brackets that are open takes the place of recursion. */
  document(): Found {
    const open: string[] = [];
    for (;;) {
      const fault = this.begin(open);
      if (fault !== null) return this.atEnd() ? 'end' : fault;
      // A value is read; so are all the groups that end with it.
      for (;;) {
        this.space();
        const bracket = open.at(-1);
        if (bracket === undefined) return this.atEnd() ? null : 'more';
        if (this.take(bracket === '{' ? '}' : ']')) open.pop();
        else if (this.take(',')) break;
        else return this.atEnd() ? 'end' : 'comma';
      }
      if (open.at(-1) === '{') {
        const key = this.key();
        if (key !== null) return this.atEnd() ? 'end' : key;
      }
    }
  }

  /** Reads a value that holds no other, or into the first one that does not. */
  private begin(open: string[]): Found {
    for (;;) {
      this.space();
      if (this.take('[')) {
        open.push('[');
        this.space();
        if (this.text[this.at] === ']') return null;
      } else if (this.take('{')) {
        open.push('{');
        this.space();
        if (this.text[this.at] === '}') return null;
        const fault = this.key();
        if (fault !== null) return fault;
      } else return this.single();
    }
  }

  private key(): Found {
    this.space();
    if (this.text[this.at] !== '"') return 'key';
    const fault = this.string();
    if (fault !== null) return fault;
    this.space();
    return this.take(':') ? null : 'colon';
  }

  private single(): Found {
    const first = this.text[this.at];
    if (first === '"') return this.string();
    if (first === '-' || (first !== undefined && first >= '0' && first <= '9')) return this.number();
    for (const word of ['true', 'false', 'null']) if (first === word[0]) return this.word(word);
    return 'value';
  }

  private word(word: string): Found {
    for (const letter of word) if (!this.take(letter)) return 'value';
    return null;
  }

  private string(): Found {
    this.at += 1;
    for (;;) {
      this.skip(PLAIN);
      if (this.take('"')) return null;
      if (this.atEnd()) return 'end';
      if (!this.take('\\')) return 'break';
      if (this.skip(ESCAPE) === 0) return this.badEscape();
    }
  }

  private badEscape(): Found {
    if (this.take('u')) this.skip(/[0-9a-fA-F]{0,3}/y);
    return 'escape';
  }

  private number(): Found {
    this.take('-');
    if (!this.take('0') && this.skip(DIGITS) === 0) return 'number';
    if (this.take('.') && this.skip(DIGITS) === 0) return 'number';
    if (this.take('e') || this.take('E')) {
      if (!this.take('+')) this.take('-');
      if (this.skip(DIGITS) === 0) return 'number';
    }
    return null;
  }

  private space(): void {
    this.skip(SPACE);
  }

  private atEnd(): boolean {
    return this.at >= this.text.length;
  }

  private take(letter: string): boolean {
    if (this.text[this.at] !== letter) return false;
    this.at += 1;
    return true;
  }

  /** Reads what the pattern matches here; its length. */
  private skip(pattern: RegExp): number {
    pattern.lastIndex = this.at;
    const length = pattern.exec(this.text)?.[0].length ?? 0;
    this.at += length;
    return length;
  }
}
