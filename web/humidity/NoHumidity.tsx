/** A house whose loggers measure temperature alone: no reproach, and what humidity would tell. */
import { noHumidity } from '../../src/words/aboutHumidity.ts';

export const NoHumidity = () => (
  <>
    <p class="answer">{noHumidity.answer}</p>
    <section>
      <h2>What logging it would tell</h2>
      <ul class="points">
        {noHumidity.tells.map((it) => (
          <li key={it}>{it}</li>
        ))}
      </ul>
      <p>{noHumidity.how}</p>
    </section>
  </>
);
