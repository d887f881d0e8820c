/** Of each route what it does, and the type of what it answers (in `server/api/shapes.ts` or `accessShapes.ts`). */
export const apiWords: Readonly<Record<string, { readonly does: string; readonly answers: string }>> = {
  'GET /api/houses': { does: 'All houses with their latest result in short.', answers: 'HousesAnswer' },
  'GET /api/houses/:id': {
    does: 'One house: its `house.json`, its assessment (`src/assessment.schema.json`), files and imports.',
    answers: 'HouseDetail',
  },
  'DELETE /api/houses/:id': {
    does: 'Deletes the house whole: readings, files, results and links.',
    answers: '204',
  },
  'PUT /api/houses/:id/away': {
    does: 'Puts the house away from the list, or brings it back.',
    answers: 'HouseSummary',
  },
  'POST /api/houses/:id/undo': {
    does: 'Takes the latest import or change back; of readings that were posted, the whole latest day.',
    answers: 'HouseSummary',
  },
  'GET /api/houses/:id/nights': { does: 'The judged nights as lines to draw.', answers: 'NightsAnswer' },
  'GET /api/houses/:id/readings': {
    does: 'The readings from one instant to another (seconds since 1970 UTC), thinned to so many intervals.',
    answers: 'ReadingsAnswer',
  },
  'POST /api/houses/:id/readings': {
    does:
      'Adds readings as a later export of one of the house’s loggers: a log as the logger writes it (`text/csv`, with ' +
      '`?file=`), or the same as JSON. The logger’s entry in `house.json` says how the file is read (clock, columns, ' +
      'unit), in JSON too. The same readings again change nothing; of an instant that is stored with another value the ' +
      'stored one stays. What is sent on one day (UTC), of whatever loggers, is one import, and the latest day can be ' +
      'undone; each logger’s readings go on in one file, told in `file`, until that has 64 KB. At most 1 MB at a time: longer logs go by `/api/bringings`.',
    answers: 'AddedExport',
  },
  'PUT /api/houses/:id/nights/:date/decision': {
    does: 'Puts a night in or leaves it out by hand.',
    answers: 'HouseSummary',
  },
  'DELETE /api/houses/:id/nights/:date/decision': {
    does: 'Leaves a night to the rules again.',
    answers: 'HouseSummary',
  },
  'POST /api/houses/:id/notes': { does: 'Adds a note.', answers: 'HouseSummary' },
  'DELETE /api/houses/:id/notes': { does: 'Takes a note away.', answers: 'HouseSummary' },
  'PUT /api/houses/:id/stages': { does: 'Moves the bounds of stages.', answers: 'HouseSummary' },
  'POST /api/houses/:id/stages': { does: 'Adds a stage.', answers: 'HouseSummary' },
  'DELETE /api/houses/:id/stages': { does: 'Takes a stage away.', answers: 'HouseSummary' },
  'GET /api/houses/:id/house.json': { does: 'Its `house.json`, as it was written.', answers: 'JSON' },
  'PUT /api/houses/:id/house': {
    does:
      'Keeps another `house.json`, with all that is not changed left as it was written. Refused (409) where `was` is ' +
      'not what is stored, or where the new one is none.',
    answers: 'HouseSummary',
  },
  'POST /api/houses/:id/heat': {
    does: 'Adds heat that was read off a meter by eye.',
    answers: 'HouseSummary',
  },
  'DELETE /api/houses/:id/heat': { does: 'Takes such a meter reading away.', answers: 'HouseSummary' },
  'GET /api/houses/:id/humidity': {
    does: 'Humidity and what follows from it, over a span as for the readings.',
    answers: 'HumidityAnswer',
  },
  'GET /api/houses/:id/humidity/progress': {
    does: 'How far the humidity is worked out while somebody waits for it, as server-sent events.',
    answers: 'HumidityProgress',
  },
  'GET /api/houses/:id/loggers': { does: 'What each logger did.', answers: 'LoggersAnswer' },
  'GET /api/houses/:id/folder.zip': {
    does: 'The house folder: `house.json` and the original files, byte for byte. It can be brought again.',
    answers: 'a zip',
  },
  'GET /api/houses/:id/nameless.zip': { does: 'The same without names.', answers: 'a zip' },
  'GET /api/houses/:id/sheet.html': { does: 'The handover sheet.', answers: 'a page' },
  'POST /api/houses/:id/sheet.html': { does: 'The handover sheet with photos (a form).', answers: 'a page' },
  'GET /api/houses/:id/first-page.html': { does: 'Its first page alone.', answers: 'a page' },
  'GET /api/houses/:id/pack.zip': { does: 'The handover pack.', answers: 'a zip' },
  'POST /api/houses/:id/pack.zip': { does: 'The handover pack with photos (a form).', answers: 'a zip' },
  'POST /api/houses/:id/assessment': {
    does: 'Asks for an assessment, also of what is assessed.',
    answers: 'Progress',
  },
  'DELETE /api/houses/:id/assessment': { does: 'Cancels it.', answers: 'Progress' },
  'GET /api/houses/:id/progress': {
    does: 'How the assessment goes, as server-sent events.',
    answers: 'Progress',
  },
  'GET /api/houses/:id/links': {
    does: 'The links to this house, and until when it is kept.',
    answers: 'LinksAnswer',
  },
  'POST /api/houses/:id/links': { does: 'Makes a link; it is told this once.', answers: 'MadeLink' },
  'DELETE /api/houses/:id/links/:number': { does: 'Takes a link back.', answers: 'LinksAnswer' },
  'PUT /api/houses/:id/keep-until': { does: 'Says until when the house is kept.', answers: 'LinksAnswer' },
  'POST /api/bringings': {
    does: 'Begins to bring a house of its own, or files onto a stored one. Nothing is stored until it is kept.',
    answers: '{ id }',
  },
  'PUT /api/bringings/:id/files/:path{.+}': {
    does: 'One file, by its path in the house folder; `house.json` among them.',
    answers: 'TakenFile',
  },
  'GET /api/bringings/:id': { does: 'What was understood of all of them.', answers: 'BringingPreview' },
  'GET /api/bringings/:id/progress': {
    does: 'How the reading goes, as server-sent events.',
    answers: 'BringingProgress',
  },
  'POST /api/bringings/:id/keep': { does: 'Stores the house wholly or not at all.', answers: '{ id }' },
  'DELETE /api/bringings/:id': { does: 'Drops what was brought.', answers: '204' },
  'GET /api/watched': {
    does: 'The files of the watched folder that could not be taken, and why.',
    answers: 'WatchedAnswer',
  },
  'POST /api/demonstration': { does: 'Stores the demonstration house again.', answers: '{ id }' },
  'GET /api/access': { does: 'Who asks.', answers: 'AccessAnswer' },
  'POST /api/access/sign-in': { does: 'Signs in; the answer sets a cookie.', answers: 'AccessAnswer' },
  'POST /api/access/sign-out': { does: 'Signs out.', answers: 'AccessAnswer' },
  'GET /l/:token': { does: 'Opens a link: it becomes a cookie, for `/api/shared` alone.', answers: 'a page' },
  'GET /api/shared': { does: 'By a link: its house, without settings.', answers: 'SharedHouse' },
  'GET /api/shared/nights': { does: 'By a link: its nights.', answers: 'NightsAnswer' },
  'GET /api/shared/readings': { does: 'By a link: its readings.', answers: 'ReadingsAnswer' },
  'GET /api/shared/progress': { does: 'By a link: how its assessment goes.', answers: 'Progress' },
  'GET /api/shared/first-page.html': { does: 'By a link: the first page of the sheet.', answers: 'a page' },
  'POST /api/shared/bringings': { does: 'By a link that may add: begins to bring logs.', answers: '{ id }' },
  'PUT /api/shared/bringings/:bringing/files/:name': {
    does: 'One log, as bytes (`application/octet-stream`).',
    answers: 'TakenFile',
  },
  'GET /api/shared/bringings/:bringing': { does: 'What was understood of them.', answers: 'SharedBringing' },
  'POST /api/shared/bringings/:bringing/keep': { does: 'Stores them.', answers: '204' },
  'DELETE /api/shared/bringings/:bringing': { does: 'Drops them.', answers: '204' },
};
