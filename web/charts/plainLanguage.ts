/** Loaded before uPlot, which hands `navigator.language` to Intl while it is being imported, and fails if that refuses. */
import { languageForIntl } from './language.ts';

const plain = languageForIntl(navigator.language);
if (plain !== navigator.language) Object.defineProperty(navigator, 'language', { get: () => plain });
