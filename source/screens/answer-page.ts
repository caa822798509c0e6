import { decisionSentence, nowSentence } from '../words/forecasts-lines.ts';
import { nothingLookedAt, takenForGood } from '../words/not-looked-at.ts';
import { AID } from '../words/page.ts';
import { amountWords, counted, hundred } from '../words/say.ts';
import { actionPhrase } from './action-words.ts';
import { curveLines, curveSentence, skySentence } from './charts/curve.ts';
import { apart, BLANK, type Line, line, paragraph, say } from './lines.ts';
import type { Size } from './model.ts';
import { countdown } from './panels/leaving.ts';
import { stayingWords } from './panels/verdict.ts';
import { nameOf, type Sight } from './sight.ts';

export function answerTitle({ document }: Sight, columns: number): Line {
  const word = document ? document.verdict.toUpperCase() : 'WORKING';
  return apart([say('  WHY  ', 'title'), say(` ${word} `, 'verdict')], [], columns);
}

/** The answer in full: every reason, the curve, every action and look, and what the model does not know. */
export function answerLines(sight: Sight, { columns, rows }: Size): Line[] {
  const { document, model } = sight;
  if (!document) return [line(say('  The passages are being sailed.'))];
  const told = (text: string, indent = 2) => paragraph(text, columns - 2, { indent });
  const titled = (title: string, lines: readonly Line[]) =>
    lines.length === 0 ? [] : [BLANK, line(say(`  ${title}`, 'title')), ...lines];
  const actions = (list: typeof document.toGetReady) =>
    list.flatMap((action, index) => told(`${index + 1}. ${actionPhrase(sight, action)}`, 4));
  const curve = curveLines(
    document,
    model.zone,
    columns - 4,
    Math.max(3, Math.min(12, Math.floor(rows / 3))),
  );
  return [
    ...stayingWords(sight).flatMap((text) => paragraph(text, columns - 2, { indent: 2, tone: 'danger' })),
    ...document.reasons.flatMap((reason) => told(reason)),
    ...titled('THE SCORE', told(scoreWords(document))),
    ...titled('LEAVING', [
      ...told(countdown(sight)),
      ...told(curveSentence(document, model.zone)),
      ...told(skySentence(document, model.zone)),
      ...told(nowSentence(document, model.zone) ?? ''),
      ...told(decisionSentence(document, model.zone) ?? ''),
      ...(curve ?? []).map((text) => line(say(`  ${text}`, 'chart'))),
    ]),
    ...titled('TO GET READY', actions(document.toGetReady)),
    ...titled('WORTH DOING WHILE HELD', actions(document.whileHeld)),
    ...titled(
      'BEFORE LEAVING',
      document.beforeLeaving.flatMap(({ check, made }) =>
        told(`${made ? 'made' : 'to make'}: ${nameOf(sight, check)}`, 4),
      ),
    ),
    BLANK,
    ...told(AID),
  ];
}

function scoreWords(document: NonNullable<Sight['document']>): string {
  const { score, threshold, simulations, seed } = document;
  const { boat, weather, now, error } = score;
  const taken = takenForGood(document);
  const parts = [
    ...(nothingLookedAt(document)
      ? [
          `No score of the boat yet, since nothing vital was looked at; what is unknown counts as good: ${hundred(boat)}`,
        ]
      : [
          `The boat ${hundred(boat)} (${amountWords(boat, null)}, give or take ${amountWords(error, null)}), ready from ${threshold.boat}`,
          ...(taken === '' ? [] : [taken]),
        ]),
    weather === null ? 'the weather not judged' : `the weather ${hundred(weather)}`,
    ...(now === null ? [] : [`both together ${hundred(now)}, go from ${threshold.go}`]),
    `${counted(simulations, 'passage', 'passages')} sailed, seed ${seed}`,
  ];
  return `${parts.join('; ')}.`;
}
