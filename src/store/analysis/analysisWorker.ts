// The shell in which the balance is worked out beside the page. What is decided is in analyst.ts.
import type { FromAnalyst, ToAnalyst } from './analysisMessages';
import { Analyst } from './analyst';

const analyst = new Analyst();

self.onmessage = (event: MessageEvent<ToAnalyst>) => tell(analyst.answer(event.data));

function tell(message: FromAnalyst): void {
  self.postMessage(message);
}
