import fc from 'fast-check';

/**
 * Random tests draw the same values each time, so that a red run can be looked into and a green one stays green;
 * LEVERLEAF_SEED, a whole number, draws others.
 */
fc.configureGlobal({ seed: Number(process.env['LEVERLEAF_SEED'] ?? 1979) });
