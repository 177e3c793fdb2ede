import { answer } from '../state/answers.js';
import { lookedAt } from '../state/view.js';
import { Drawing } from './picture.js';

/**
 * The frame from the front, to scale, on a sheet of paper; beside it, when a change is looked at, the frame with it.
 */
export function FrameSheet() {
  const roomy = matchMedia('(min-width: 46rem)').matches;
  const glance = answer.value?.glance ?? null;
  const [front, section] = glance?.pictures ?? [];
  const looked = lookedAt.value;
  return (
    <section class="frame" aria-labelledby="frame-title">
      <h2 id="frame-title" class="ear">
        The frame
      </h2>
      {front === undefined && (
        <p class="sheet empty">
          {answer.value === null ? 'One moment …' : 'There is no frame to draw while the plan cannot be read.'}
        </p>
      )}
      {front !== undefined && (
        <div class={looked === null ? 'sheets' : 'sheets two'}>
          <figure class="sheet">
            <Drawing svg={front.svg} />
            <figcaption>{looked === null ? 'From the front, to scale' : 'As it stands'}</figcaption>
          </figure>
          {looked !== null && (
            <figure class="sheet after">
              <Drawing svg={looked.svg} as="after" />
              <figcaption>{`After: ${looked.change.words}`}</figcaption>
            </figure>
          )}
        </div>
      )}
      {section !== undefined && (
        <details class="more-pictures" open={roomy}>
          <summary>A bar, cut through</summary>
          <figure class="sheet small">
            <Drawing svg={section.svg} />
          </figure>
        </details>
      )}
    </section>
  );
}
