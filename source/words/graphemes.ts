let segmenter: Intl.Segmenter | null = null;

/** A text letter by letter as a person counts them, accents and joined signs with what they belong to. */
export function* graphemesOf(text: string): Generator<string> {
  // Made when first needed: most texts are plain, and making it takes as long as drawing them.
  segmenter ??= new Intl.Segmenter('en', { granularity: 'grapheme' });
  for (const { segment } of segmenter.segment(text)) yield segment;
}
