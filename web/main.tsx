/** Which page stands at which address. */
import { render } from 'preact';
import { LocationProvider, lazy, Route, Router } from 'preact-iso';
import './theme.css';
import { HousePage } from './pages/House.tsx';
import { Houses } from './pages/Houses.tsx';
import { NotFound } from './pages/NotFound.tsx';

/** The houses and one's answer come first; what else there is of a house comes when it is opened. */
const Nights = lazy(async () => (await import('./pages/Nights.tsx')).Nights);
const Readings = lazy(async () => (await import('./pages/Readings.tsx')).Readings);
const Design = lazy(async () => (await import('./pages/Design.tsx')).Design);
const GapPage = lazy(async () => (await import('./gap/GapPage.tsx')).GapPage);
const Stages = lazy(async () => (await import('./pages/Stages.tsx')).Stages);

/** It alone needs the schema of house.json and the time zones: the other pages do not wait for them. */
const Bring = lazy(async () => (await import('./pages/Bring.tsx')).Bring);

/** And so does this one. */
const BuildUp = lazy(async () => (await import('./buildup/BuildUpPage.tsx')).BuildUpPage);

/** Where others are served: signing in, and what a link shows. */
const SignIn = lazy(async () => (await import('./access/SignIn.tsx')).SignIn);
const Shared = lazy(async () => (await import('./access/Shared.tsx')).Shared);

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
      <Route path="/sign-in" component={SignIn} />
      <Route path="/shared" component={Shared} />
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
