/** What the header of a column says: the words for each quantity in eleven languages, and the unit beside them. */
import type { Quantity } from '../assessment.ts';
import { type Unit, unitNamed } from './units.ts';

/** A header as people would say it: "3:Temperature_Room" and "temperature room" are the same. */
export const plainName = (header: string): string =>
  withoutNumber(header)
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/[łøßæ]/g, (letter) => PLAIN_LETTERS[letter] ?? '')
    .replace(/[^a-z0-9%]+/g, ' ')
    .trim();

/** Where a header stands among the others, by its exact text, else without case and leading "3:"; -1 when it is not there. */
export function findHeader(headers: readonly string[], wanted: string): number {
  const same = (header: string) => header.trim().toLowerCase();
  const bare = (header: string) => same(withoutNumber(header));
  const exact = headers.findIndex((header) => same(header) === same(wanted));
  return exact >= 0 ? exact : headers.findIndex((header) => bare(header) === bare(wanted));
}

/** The quantity that the words of a header name; undefined when they name none, null when they name another. */
export function quantityNamed(header: string): Quantity | null | undefined {
  const name = plainName(header);
  if (OTHERS.test(name)) return null;
  return WORDS.find(([, words]) => words.test(name))?.[0];
}

/** A header whose "%" is not humidity, such as "Valve (%)". */
export const namesOtherShare = (header: string): boolean => OTHER_SHARES.test(plainName(header));

/** Statistics and limits that stand beside the reading itself, such as "Temp max" or "High alarm". */
export const isDerived = (header: string): boolean => DERIVED.test(plainName(header));

/** A header that speaks of the time. */
export const namesTime = (header: string): boolean => TIME.test(plainName(header));

/** A header of what happened rather than of what was measured: button pressed, file ended, alarm. */
export const namesEvent = (header: string): boolean => EVENTS.test(plainName(header));

/** Water, flues and heaters, which may well be hotter than any air in a house. */
export const namesHotThing = (header: string): boolean => HOT_THINGS.test(plainName(header));

/**
 * The units that a header may mean, the likeliest first: what stands in brackets, what follows a comma or slash,
 * its last word or two, the whole of it.
 */
export function unitsNamed(header: string): { readonly unit: Unit; readonly sure: boolean }[] {
  const bare = withoutNumber(header);
  const bracketed = [...bare.matchAll(/[[({]([^\])}]+)[\])}]/g)].map((match) => match[1] ?? '');
  const parts = bare.split(/[,;]|\s\/\s/).slice(1);
  const words = bare.split(/[\s_,;]+/);
  const last = words.length > 1 ? [words.slice(-2).join(''), words.at(-1) ?? ''] : [];
  const degree = bare.includes('°') || bare.includes('º') ? [/[°º]\s*[CFK]\b/.exec(bare)?.[0] ?? ''] : [];
  const find = (texts: readonly string[], sure: boolean) =>
    texts.flatMap((text) => {
      const unit = unitNamed(text);
      return unit === undefined ? [] : [{ unit, sure }];
    });
  return [...find([...bracketed, ...parts, ...degree, bare], true), ...find(last, false)];
}

const withoutNumber = (header: string) => header.replace(/^\s*\d+:\s*/, '');

/** Letters that no accent can be taken from. */
const PLAIN_LETTERS: Readonly<Record<string, string>> = { ł: 'l', ø: 'o', ß: 'ss', æ: 'ae' };

const TIME =
  /\b(time|date|timestamp|datetime|stamp|zeit|datum|uhrzeit|zeitpunkt|zeitstempel|fecha|hora|heure|horodatage|data|ora|orario|tijd|tijdstip|czas|cas|tid|tidpunkt|tidspunkt|dato|klokkeslaet|epoch|unix|utc)\b|\b(date|time)\s?(time|stamp)/;

const DERIVED =
  /\b(min|max|minimum|maximum|high|low|limit|alarm|alert|set ?point|target|std|dev|stdev|sd|sollwert|soll|consigna|consigne)\b/;

const EVENTS =
  /\b(events?|flags?|marker|status|state|button|connected|attached|detached|stopped|started|end of file|eof|door|door open|window open|motion|presence|occupan[a-z]*|alarm|alert|ereignis|zustand|tur|evento|estado|etat|evenement|stato|gebeurtenis)\b/;

const HOT_THINGS =
  /flow|return|supply|boiler|flue|water|\bdhw\b|tank|cylinder|stove|radiator|collector|chimney|vorlauf|rucklauf|kessel|wasser|ofen|heizkorper|caldera|agua|chaudiere|\beau\b|caldaia|acqua|ketel/;

/** Named like a quantity that is read, and yet another thing. */
const OTHERS =
  /direction|\bdir\b|richtung|direccion|direzione|windricht|kierunek|\bsmer\b|\bbearing\b|gust|rafaga|\bboe|rafale|raffica|heat index|feels|wind ?chill|wet ?bulb|apparent|gefuhlt|batt(ery)? (level|charge|%)|signal|rssi|power factor|cos ?phi/;

/** A percentage of something else. */
const OTHER_SHARES = /valve|\bfan\b|\bsoc\b|level|cloud|cover|position|duty|charge|open|batt/;

const WORDS: readonly (readonly [Quantity, RegExp])[] = [
  [
    'dewPoint',
    /dew ?(point|pt)|t ?dew|dauwpunt|taupunkt|rocio|rosee|rugiada|orvalho|punkt rosy|rosny bod|da?gg?punkt|dugpunkt|\btd\b/,
  ],
  [
    'absoluteHumidity',
    /abs[a-z]* (hum|feucht|umid|vlhk|wilg|fukt|fugt)|(humedad|humidite|umidita|umidade|wilgotnosc|vochtigheid) (abs|ass|bezw)|absolute ?(hum|feucht|vocht)|absolut ?(fukt|fugt)/,
  ],
  [
    'humidity',
    /humid|humedad|feucht|vocht|umidita|umidade|wilgotn|vlhkost|fuktighet|fugtighed|\bhum\d*\b|\brh|\bhr\b|\brf\b|\brv\b|hygro/,
  ],
  [
    // "Temps" and "tempo" are the time, "Zeitstempel" its stamp
    'temperature',
    /(?<!zeits)temp(?!s\b|o\b)|teplota|thermom|\bt( ?\d+)?$|^t (in|out|int|ext|inside|outside|indoor|outdoor|room|air)\b|\b(in|out)door t\b/,
  ],
  [
    'windSpeed',
    /wind(?!ow)|\bws\b|viento|\bvento\b|vitesse (du )?vent|anemom|wiatr|vetru|\bvitr\b|vindha|vindsty/,
  ],
  [
    'irradiance',
    /irradia|pyranom|piranom|globalstrahl|einstrahl|strahlung|radiac|radiazione|rayonnement|straling|stralning|instraling|promieniowan|\bzareni|insolation|solar ?rad|\bghi\b/,
  ],
  ['carbonDioxide', /\bco ?2\b|carbon ?dioxide|kohlendioxid/],
  [
    'pressure',
    /pressure|\bpress\b|presion|druck|pression|luchtdruk|pressione|pressao|cisnienie|\btlak|lufttryck|lufttryk|\bbaro/,
  ],
  ['voltage', /volt|spannung|\btension|tensao|spanning|spaending|napiecie|napeti|\bbatt/],
  ['power', /power|potencia|leistung|puissance|vermogen|potenza|\bmoc\b|\bvykon|effekt\b|\bk?w(att)?\b/],
  [
    'meter',
    /\bmeter|zahler|contador|compteur|contatore|\bteller|licznik|elmer|matarstallning|cumul|total.*(energ|kwh)|(energ|kwh).*total/,
  ],
  ['energy', /energ|consum|verbrauch|verbruik|spotreba|zuzycie|forbrug|forbrukning|\bk?wh\b/],
];
