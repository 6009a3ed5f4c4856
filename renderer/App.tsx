import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { Redirect, Route, Router, Switch, useRoute } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import { CommandsProvider } from './commands/CommandsProvider.tsx';
import { useAsOf } from './desk/asOfDay.ts';
import { useBook } from './desk/useBook.ts';
import { AsOfBar } from './parts/AsOfBar.tsx';
import { Entering } from './parts/Entering.tsx';
import { FaultBoundary } from './parts/FaultBoundary.tsx';
import { Frame } from './parts/Frame.tsx';
import { MarginProvider } from './parts/Margin.tsx';
import { NoticeProvider } from './parts/Notice.tsx';
import { yardInAddress } from './parts/needsPages.ts';
import { AnswersScreen } from './screens/answers/AnswersScreen.tsx';
import { ActScreen } from './screens/acts/ActScreen.tsx';
import { ActsScreen } from './screens/acts/ActsScreen.tsx';
import { BookScreen } from './screens/book/BookScreen.tsx';
import { ColoniesScreen } from './screens/colonies/ColoniesScreen.tsx';
import { ColonyScreen } from './screens/colonies/ColonyScreen.tsx';
import { DeadOutPick } from './screens/deadOut/DeadOutPick.tsx';
import { DeadOutScreen } from './screens/deadOut/DeadOutScreen.tsx';
import { EntryScreen } from './screens/entry/EntryScreen.tsx';
import { HelpScreen } from './screens/help/HelpScreen.tsx';
import { HoneyScreen } from './screens/honey/HoneyScreen.tsx';
import { LabelPrint } from './screens/honey/LabelPrint.tsx';
import { LotScreen } from './screens/honey/LotScreen.tsx';
import { LinesPrint } from './screens/lines/LinesPrint.tsx';
import { LinesScreen } from './screens/lines/LinesScreen.tsx';
import { OrdersPrint } from './screens/orders/OrdersPrint.tsx';
import { OrdersScreen } from './screens/orders/OrdersScreen.tsx';
import { QueenScreen } from './screens/queens/QueenScreen.tsx';
import { QueensScreen } from './screens/queens/QueensScreen.tsx';
import { TagsPrint } from './screens/tags/TagsPrint.tsx';
import { LossesScreen } from './screens/losses/LossesScreen.tsx';
import { NeedsScreen } from './screens/needs/NeedsScreen.tsx';
import { SpacePrint } from './screens/space/SpacePrint.tsx';
import { SpaceScreen } from './screens/space/SpaceScreen.tsx';
import { StoresPrint } from './screens/stores/StoresPrint.tsx';
import { StoresScreen } from './screens/stores/StoresScreen.tsx';
import { MitesScreen } from './screens/mites/MitesScreen.tsx';
import { TallyScreen } from './screens/tally/TallyScreen.tsx';
import { TreatmentsPrint } from './screens/mites/TreatmentsPrint.tsx';
import { NowhereScreen } from './screens/nowhere/NowhereScreen.tsx';
import { ReviewPrint } from './screens/paper/ReviewPrint.tsx';
import { PastTonight } from './screens/past/PastTonight.tsx';
import { SheetScreen } from './screens/sheets/SheetScreen.tsx';
import { SortOutScreen } from './screens/sortOut/SortOutScreen.tsx';
import { StartScreen } from './screens/start/StartScreen.tsx';
import { StockScreen } from './screens/stock/StockScreen.tsx';
import { ReturnsScreen } from './screens/returns/ReturnsScreen.tsx';
import { RulesScreen } from './screens/rules/RulesScreen.tsx';
import { RoundPrint } from './screens/tonight/RoundPrint.tsx';
import { TonightScreen } from './screens/tonight/TonightScreen.tsx';
import { CalendarScreen } from './screens/work/CalendarScreen.tsx';
import { HoursScreen } from './screens/work/HoursScreen.tsx';
import { TasksScreen } from './screens/work/TasksScreen.tsx';
import { TripPrint } from './screens/work/TripPrint.tsx';
import { WorkedScreen } from './screens/work/WorkedScreen.tsx';
import { WorkScreen } from './screens/work/WorkScreen.tsx';
import { YardScreen } from './screens/yards/YardScreen.tsx';
import { YardsScreen } from './screens/yards/YardsScreen.tsx';

const queries = new QueryClient({
  // Only writes change what a read answers; a fault is an answer, so nothing is tried again behind the person's back.
  defaultOptions: { queries: { retry: false, staleTime: 30_000, networkMode: 'always' } },
});

export function App() {
  return (
    <QueryClientProvider client={queries}>
      <Router hook={useHashLocation}>
        <MarginProvider>
          <NoticeProvider>
            <FaultBoundary>
              <CommandsProvider>
                <PrintBar />
                <Screens />
              </CommandsProvider>
            </FaultBoundary>
          </NoticeProvider>
        </MarginProvider>
      </Router>
    </QueryClientProvider>
  );
}

/** The frame has the banner of its own screens; pages for printing stand outside it. */
function PrintBar() {
  const [printing] = useRoute('/print/*');
  return printing ? <AsOfBar /> : null;
}

function Screens() {
  const { status, book, fault, loading } = useBook();
  const asOf = useAsOf();
  if (loading) return null;
  if (!status || !book) return <StartScreen status={status} fault={fault} />;
  return (
    <Switch>
      <Route path="/print/orders" component={OrdersPrint} />
      <Route path="/print/lines" component={LinesPrint} />
      <Route path="/print/stores" component={StoresPrint} />
      <Route path="/print/space" component={SpacePrint} />
      <Route path="/print/round/:yard/:day">{({ yard, day }) => <RoundPrint key={`${yard} ${day}`} yard={yard} day={day} />}</Route>
      <Route path="/print/trip/:day">{({ day }) => <TripPrint key={day} day={day} />}</Route>
      <Route path="/print/tags/:yard?">{({ yard }) => <TagsPrint yard={yard} />}</Route>
      <Route path="/print/treatments/:season?">{({ season }) => <TreatmentsPrint key={season ?? ''} season={season} />}</Route>
      <Route path="/print/labels/:lot">{({ lot }) => <LabelPrint key={lot} lot={lot} />}</Route>
      <Route path="/print/losses">
        <ReviewPrint />
      </Route>
      <Route path="/print/losses/:season">{({ season }) => <ReviewPrint key={season} season={season} />}</Route>
      <Route>
        <Frame>
          <Switch>
            <Route path="/">
              <Redirect to="/tonight" replace />
            </Route>
            <Route path="/tonight">{asOf === null ? <TonightScreen /> : <PastTonight />}</Route>
            <Route path="/tonight/:yard/:day">{({ yard, day }) => (asOf === null ? <TonightScreen key={`${yard} ${day}`} yard={yard} day={day} /> : <PastTonight />)}</Route>
            <Route path="/work" component={WorkScreen} />
            <Route path="/work/tasks" component={TasksScreen} />
            <Route path="/work/hours" component={HoursScreen} />
            <Route path="/work/worked" component={WorkedScreen} />
            <Route path="/work/calendar" component={CalendarScreen} />
            <Route path="/needs" component={NeedsScreen} />
            <Route path="/needs/stores/:yard?">{({ yard }) => <StoresScreen key={yard ?? ''} at={yardInAddress(yard)} />}</Route>
            <Route path="/needs/space/:yard?">{({ yard }) => <SpaceScreen key={yard ?? ''} at={yardInAddress(yard)} />}</Route>
            <Route path="/needs/tally" component={TallyScreen} />
            <Route path="/yards" component={YardsScreen} />
            <Route path="/yards/:id">{({ id }) => <YardScreen key={id} id={id} />}</Route>
            <Route path="/colonies" component={ColoniesScreen} />
            <Route path="/colonies/:id">{({ id }) => <ColonyScreen key={id} id={id} />}</Route>
            <Route path="/queens/:id">{({ id }) => <QueenScreen key={id} id={id} />}</Route>
            <Route path="/colonies/:id/dead-out">
              {({ id }) => (
                <Entering>
                  <DeadOutScreen key={id} id={id} />
                </Entering>
              )}
            </Route>
            <Route path="/dead-out" component={DeadOutPick} />
            <Route path="/entries/:id">{({ id }) => <EntryScreen key={id} id={id} />}</Route>
            <Route path="/needs/mites/:yard?">{({ yard }) => <MitesScreen key={yard ?? ''} at={yardInAddress(yard)} />}</Route>
            <Route path="/needs/queens/:yard?">{({ yard }) => <QueensScreen key={yard ?? ''} at={yardInAddress(yard)} />}</Route>
            <Route path="/help" component={HelpScreen} />
            <Route path="/lines" component={LinesScreen} />
            <Route path="/losses/answers" component={AnswersScreen} />
            <Route path="/losses" component={LossesScreen} />
            <Route path="/honey" component={HoneyScreen} />
            <Route path="/honey/lots/:lot">{({ lot }) => <LotScreen key={lot} lot={lot} />}</Route>
            <Route path="/stock" component={StockScreen} />
            <Route path="/orders" component={OrdersScreen} />
            <Route path="/book" component={BookScreen} />
            <Route path="/book/returns" component={ReturnsScreen} />
            <Route path="/book/sheet">
              <Entering>
                <SheetScreen />
              </Entering>
            </Route>
            <Route path="/book/sort-out">
              <Entering>
                <SortOutScreen />
              </Entering>
            </Route>
            <Route path="/acts" component={ActsScreen} />
            <Route path="/acts/:id">{({ id }) => <ActScreen key={id} id={id} />}</Route>
            <Route path="/book/rules/:room?">{({ room }) => <RulesScreen key={room ?? ''} room={room} />}</Route>
            <Route component={NowhereScreen} />
          </Switch>
        </Frame>
      </Route>
    </Switch>
  );
}
