/** The words of a PDF whose insides were left plain: glyphs are turned back into letters by the document's own tables (PDF 32000-1, 9.10.3).
 *  One text a page. */
export function pdfText(bytes: Uint8Array): readonly string[] {
  const source = Buffer.from(bytes).toString('latin1');
  const objects = new Map(
    [...source.matchAll(/(\d+) 0 obj\n([\s\S]*?)\nendobj/g)].map(
      ([, id = '', body = '']) => [Number(id), body] as const,
    ),
  );
  const follow = (body: string, key: string): string => objects.get(refIn(body, key) ?? -1) ?? '';
  const pages = [...objects.values()].filter((body) => /\/Type \/Page\b(?!s)/.test(body));
  return pages.map((page) => {
    const resources = follow(page, 'Resources') || page;
    const fonts = new Map(
      [...(/\/Font <<([\s\S]*?)>>/.exec(resources)?.[1] ?? '').matchAll(/\/(\w+) (\d+) 0 R/g)].map(
        ([, name = '', id = '']) => [name, lettersOf(follow(objects.get(Number(id)) ?? '', 'ToUnicode'))] as const,
      ),
    );
    return wordsIn(follow(page, 'Contents'), fonts);
  });
}

const refIn = (body: string, key: string): number | undefined => {
  const id = new RegExp(`/${key} (\\d+) 0 R`).exec(body)?.[1];
  return id === undefined ? undefined : Number(id);
};

type Letters = ReadonlyMap<number, string>;

/** The letter of each glyph, from ranges such as `<0000> <0002> [<0041> <0042> <0043>]`. */
function lettersOf(table: string): Letters {
  return new Map(
    [...table.matchAll(/<([0-9a-f]+)> <[0-9a-f]+> \[([^\]]*)\]/gi)].flatMap(([, from = '', list = '']) =>
      [...list.matchAll(/<([0-9a-f ]+)>/gi)].map(
        ([, code = ''], at) => [parseInt(from, 16) + at, letters(code)] as const,
      ),
    ),
  );
}

const letters = (code: string): string => Buffer.from(code.replaceAll(' ', ''), 'hex').swap16().toString('utf16le');

/** What the page's strokes write, a line for each piece of text. */
function wordsIn(content: string, fonts: ReadonlyMap<string, Letters>): string {
  let font: Letters = new Map();
  const said: string[] = [];
  for (const [, name, pieces] of content.matchAll(/\/(\w+) [\d.]+ Tf|\[([^\]]*)\] TJ/g)) {
    if (name !== undefined) font = fonts.get(name) ?? font;
    else
      said.push(
        [...(pieces ?? '').matchAll(/<([0-9a-f]+)>/gi)]
          .flatMap(([, hex = '']) => hex.match(/.{4}/g) ?? [])
          .map((glyph) => font.get(parseInt(glyph, 16)) ?? '?')
          .join(''),
      );
  }
  return said.join('\n');
}
