import { lexer, type Token, type Tokens } from 'marked';
import { headingId } from '../../state/note-places.ts';
import { linkIn, type NoteLink } from './note-links.model.ts';

/** A stretch of a line. */
export type NoteSpan =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'code'; readonly text: string }
  | { readonly kind: 'strong' | 'stressed'; readonly spans: readonly NoteSpan[] }
  | { readonly kind: 'link'; readonly link: NoteLink; readonly spans: readonly NoteSpan[] }
  /** a drawing by its file’s name */
  | { readonly kind: 'picture'; readonly file: string; readonly said: string };

/** A piece of a note, as plain data: nothing of it is ever taken for markup of the page. */
export type NoteBlock =
  | {
      readonly kind: 'heading';
      readonly level: number;
      readonly id: string;
      readonly text: string;
      readonly spans: readonly NoteSpan[];
    }
  | { readonly kind: 'paragraph'; readonly spans: readonly NoteSpan[] }
  | { readonly kind: 'list'; readonly ordered: boolean; readonly items: readonly (readonly NoteBlock[])[] }
  | {
      readonly kind: 'table';
      readonly head: readonly (readonly NoteSpan[])[];
      readonly rows: readonly (readonly (readonly NoteSpan[])[])[];
    }
  | { readonly kind: 'code'; readonly text: string }
  | { readonly kind: 'quote'; readonly blocks: readonly NoteBlock[] };

/** Reads a note. @param known names of the notes there are: a link to another is shown as its words */
export function readNote(text: string, known: ReadonlySet<string>): NoteBlock[] {
  return lexer(text).flatMap((token) => blockOf(token, known));
}

/** The words of spans, without their looks. */
export function plainWords(spans: readonly NoteSpan[]): string {
  return spans
    .map((span) =>
      span.kind === 'text' || span.kind === 'code'
        ? span.text
        : span.kind === 'picture'
          ? ''
          : plainWords(span.spans),
    )
    .join('');
}

function blockOf(token: Token, known: ReadonlySet<string>): NoteBlock[] {
  const spans = (tokens: readonly Token[] | undefined): NoteSpan[] =>
    (tokens ?? []).flatMap((t) => spanOf(t, known));
  const blocks = (tokens: readonly Token[] | undefined): NoteBlock[] =>
    (tokens ?? []).flatMap((t) => blockOf(t, known));
  switch (token.type) {
    case 'heading': {
      const words = spans(token.tokens);
      const text = plainWords(words);
      return [
        { kind: 'heading', level: (token as Tokens.Heading).depth, id: headingId(text), text, spans: words },
      ];
    }
    case 'paragraph':
    case 'text':
      return [{ kind: 'paragraph', spans: spans(token.tokens) }];
    case 'list': {
      const { ordered, items } = token as Tokens.List;
      return [{ kind: 'list', ordered, items: items.map((item) => blocks(item.tokens)) }];
    }
    case 'table': {
      const { header, rows } = token as Tokens.Table;
      return [
        {
          kind: 'table',
          head: header.map((cell) => spans(cell.tokens)),
          rows: rows.map((row) => row.map((cell) => spans(cell.tokens))),
        },
      ];
    }
    case 'code':
      return [{ kind: 'code', text: (token as Tokens.Code).text }];
    case 'blockquote':
      return [{ kind: 'quote', blocks: blocks(token.tokens) }];
    case 'space':
      return [];
    default:
      // Whatever else is written is shown as written.
      return [{ kind: 'paragraph', spans: [{ kind: 'text', text: token.raw }] }];
  }
}

function spanOf(token: Token, known: ReadonlySet<string>): NoteSpan[] {
  const spans = (tokens: readonly Token[] | undefined): NoteSpan[] =>
    (tokens ?? []).flatMap((t) => spanOf(t, known));
  switch (token.type) {
    case 'text':
      return 'tokens' in token && token.tokens !== undefined
        ? spans(token.tokens)
        : [{ kind: 'text', text: (token as Tokens.Text).text }];
    case 'escape':
      return [{ kind: 'text', text: (token as Tokens.Escape).text }];
    case 'codespan':
      return [{ kind: 'code', text: (token as Tokens.Codespan).text }];
    case 'strong':
      return [{ kind: 'strong', spans: spans(token.tokens) }];
    case 'em':
      return [{ kind: 'stressed', spans: spans(token.tokens) }];
    case 'link': {
      const link = linkIn((token as Tokens.Link).href, known);
      return link === null ? spans(token.tokens) : [{ kind: 'link', link, spans: spans(token.tokens) }];
    }
    case 'image': {
      const { href, text } = token as Tokens.Image;
      return [{ kind: 'picture', file: href.split('/').pop()!, said: text }];
    }
    default:
      return [{ kind: 'text', text: token.raw }];
  }
}
