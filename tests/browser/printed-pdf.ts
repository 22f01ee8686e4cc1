import type { Page } from 'playwright-core';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A run of text as it lies on a page of paper, points from the bottom left. */
export interface PrintedText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly right: number;
  readonly sizePt: number;
}

export interface PrintedPage {
  readonly widthPt: number;
  readonly heightPt: number;
  readonly runs: readonly PrintedText[];
  /** all its words, without any space */
  readonly words: string;
  readonly links: number;
  readonly fonts: readonly { readonly name: string; readonly isEmbedded: boolean }[];
  /** roles of its structure, with what stands for a picture */
  readonly structure: readonly { readonly role: string; readonly alt: string | null }[];
}

export interface PrintedDocument {
  readonly pages: readonly PrintedPage[];
  readonly isTagged: boolean;
  readonly fields: number;
  readonly hasScripts: boolean;
  readonly outline: readonly string[];
}

/** Without any space: how words are set apart on paper is the printer’s. */
export const spaceless = (text: string): string => text.replace(/\s+/g, '');

/** Prints a page as the browser would, and reads the paper. */
export async function printed(page: Page): Promise<PrintedDocument> {
  const pdf = await page.pdf({ tagged: true, outline: true, preferCSSPageSize: true });
  const task = getDocument({
    data: new Uint8Array(pdf),
    disableFontFace: true,
    fontExtraProperties: true,
    verbosity: 0,
  });
  const document = await task.promise;
  const pages: PrintedPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    pages.push(await readPage(await document.getPage(number)));
  }
  const marks = await document.getMarkInfo();
  const fields = await document.getFieldObjects();
  const outline = (await document.getOutline()) as readonly { title: string }[] | null;
  const result = {
    pages,
    isTagged: marks?.Marked === true,
    fields: Object.keys(fields ?? {}).length,
    hasScripts: await document.hasJSActions(),
    outline: (outline ?? []).map(({ title }) => title),
  };
  await task.destroy();
  return result;
}

type PdfPage = Awaited<ReturnType<Awaited<ReturnType<typeof getDocument>['promise']>['getPage']>>;

async function readPage(page: PdfPage): Promise<PrintedPage> {
  const { width, height } = page.getViewport({ scale: 1 });
  const { items } = await page.getTextContent();
  const runs = items.flatMap((item): PrintedText[] => {
    if (!('str' in item) || item.str.trim() === '') return [];
    const [, , , sizePt, x, y] = item.transform as number[];
    return [{ text: item.str, x, y, right: x + item.width, sizePt }];
  });
  const structure: { role: string; alt: string | null }[] = [];
  collect(await page.getStructTree(), structure);
  return {
    widthPt: width,
    heightPt: height,
    runs,
    words: spaceless(runs.map(({ text }) => text).join('')),
    links: (await page.getAnnotations()).length,
    fonts: await fontsOf(page),
    structure,
  };
}

interface StructureNode {
  readonly role?: string;
  readonly alt?: string;
  readonly children?: readonly unknown[];
}

function collect(node: StructureNode | null, into: { role: string; alt: string | null }[]): void {
  if (node === null) return;
  if (node.role !== undefined) into.push({ role: node.role, alt: node.alt ?? null });
  for (const child of node.children ?? []) collect(child as StructureNode, into);
}

async function fontsOf(page: PdfPage): Promise<PrintedPage['fonts']> {
  const { fnArray, argsArray } = await page.getOperatorList();
  const used = new Set<string>();
  fnArray.forEach((op, i) => {
    if (op === OPS.setFont) used.add((argsArray as string[][])[i][0]);
  });
  return [...used].map((id) => {
    const font = page.commonObjs.get(id) as {
      readonly name: string;
      readonly missingFile?: boolean;
      readonly data?: Uint8Array;
    };
    return { name: font.name, isEmbedded: font.missingFile !== true && (font.data?.length ?? 0) > 0 };
  });
}
