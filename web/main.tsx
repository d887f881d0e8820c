/** Which page stands at which address. */
import { render } from 'preact';
import { LocationProvider, lazy, Route, Router } from 'preact-iso';
import './theme.css';
import { GapPage } from './gap/GapPage.tsx';
import { Design } from './pages/Design.tsx';
import { HousePage } from './pages/House.tsx';
import { Houses } from './pages/Houses.tsx';
import { Nights } from './pages/Nights.tsx';
import { NotFound } from './pages/NotFound.tsx';
import { Readings } from './pages/Readings.tsx';
import { Stages } from './pages/Stages.tsx';

/** It alone needs the schema of house.json and the time zones: the other pages do not wait for them. */
const Bring = lazy(async () => (await import('./pages/Bring.tsx')).Bring);

/** And so does this one. */
const BuildUp = lazy(async () => (await import('./buildup/BuildUpPage.tsx')).BuildUpPage);

/** Nor for these. */
const Humidity = lazy(async () => (await import('./humidity/HumidityPage.tsx')).HumidityPage);
const Loggers = lazy(async () => (await import('./loggers/LoggersPage.tsx')).LoggersPage);
const Test = lazy(async () => (await import('./loggers/TestPage.tsx')).TestPage);

const App = () => (
  <LocationProvider>
    <Router onRouteChange={toTop}>
      <Route path="/" component={Houses} />
      <Route path="/bring" component={Bring} />
      <Route path="/house/:id" component={HousePage} />
      <Route path="/house/:id/nights" component={Nights} />
      <Route path="/house/:id/readings" component={Readings} />
      <Route path="/house/:id/humidity" component={Humidity} />
      <Route path="/house/:id/loggers" component={Loggers} />
      <Route path="/house/:id/test" component={Test} />
      <Route path="/house/:id/design" component={Design} />
      <Route path="/house/:id/gap" component={GapPage} />
      <Route path="/house/:id/build-up" component={BuildUp} />
      <Route path="/house/:id/stages" component={Stages} />
      <Route default component={NotFound} />
    </Router>
  </LocationProvider>
);

/** A new page is begun at its head, by the eye and by the screen reader. */
let path = location.pathname;
function toTop() {
  if (location.pathname === path) return;
  path = location.pathname;
  document.getElementById('content')?.focus({ preventScroll: true });
}

const page = document.getElementById('page');
if (page !== null) render(<App />, page);
