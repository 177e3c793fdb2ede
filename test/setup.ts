import fc from 'fast-check';

/** Laws are tried on the same cases every time, so that a build fails only for what has changed; `FC_SEED=random` or a number tries others. */
const asked = process.env['FC_SEED'];
if (asked !== 'random') fc.configureGlobal({ seed: asked === undefined ? 20261125 : Number(asked) });
