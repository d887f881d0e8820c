/** What the pages say about who may look, and of what readings tell. */
import type { LinksAnswer } from '../../server/api/accessShapes.ts';
import type { Message } from '../../src/assessment.ts';

/** Beside every link that is made, and on the page that it opens. */
export const CONSENT =
  'Readings tell when people are at home, when they sleep and when they are away. A link is for those who live there, ' +
  'with their agreement, and for whom they choose.';

export const sharedConsent = (until: string) =>
  `These readings tell when people are at home and when they are away: pass this link on to nobody else. Whoever sent it to you can take it back at any time; it runs out on ${until}. ` +
  'If you do not want your home to be measured, or want the readings deleted, say so to whoever sent you the link.';

export const ENDED: Message = {
  code: 'link-ended',
  text: 'This link does not open anything any more: it has run out or was taken back.',
  remedy: 'Ask whoever sent it to you for a new one.',
};

export function reachWords({ by, addresses }: LinksAnswer['served']): string {
  if (by === null)
    return (
      'This program answers this machine only: a link would open nowhere else. To let others look, set a passphrase ' +
      '(stillwarm passphrase), then start it with --host 0.0.0.0 on a network that you trust, or with --origin behind ' +
      'a proxy with TLS.'
    );
  const where = addresses.join(' or ') || 'no address at the moment: this machine is on no network';
  return by === 'https'
    ? `Others reach this program at ${where}. All of it comes by TLS, and a browser sends what a link gave it in no other way.`
    : `Others reach this program at ${where}, as far as this network goes. That is plain http: whoever can listen on ` +
        'the network can read along, and take the cookie that a link becomes or that you signed in with. Use it on a ' +
        'network that you trust, such as the site’s own; for anything farther put a proxy with TLS before it (--origin).';
}

export const scopeWords = { see: 'See the results', add: 'See the results and add readings' } as const;
export const scopeTold = { see: 'sees results', add: 'sees results, adds readings' } as const;
export const SCOPE_HINT =
  'Results are the answer, the nights and the readings, not the settings, other houses or the files as they were brought. Adding is bringing later exports of the loggers that are here.';

export const lifetimes = [
  { days: 7, words: 'a week' },
  { days: 30, words: '30 days' },
  { days: 90, words: '90 days' },
  { days: 366, words: 'a year' },
] as const;
/** A season of nights. */
export const USUAL_DAYS = 90;

export const DELETED_WITH_IT =
  'Its readings, original files, results and links are deleted, and overwritten in the database as far as the disk lets a program do that. Copies keep what they have until you delete them too: backups (stillwarm backup, and the one beside the database that an update made), and each zip, sheet or pack that was taken along.';

export const NAMELESS =
  'house.json and the readings with the names of house, rooms, elements, stages and files replaced, without notes and reasons, and the place to a tenth of a degree (some 10 km). Times stay as they are, for nights are judged by them: whoever knows when somebody was away may still recognise the house.';
