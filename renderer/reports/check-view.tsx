import { useHouse } from '../house/house-context.tsx';
import { Button } from '../look/button.tsx';
import { useKey } from '../keys/keymap.ts';
import { go } from '../router.ts';
import { View } from '../shell/view.tsx';
import { CheckReport } from './check-report.tsx';

/** A report or a bundle that somebody brings, checked with the keys and the reports that this casebook knows. */
export default function CheckView() {
  const { laboratory, me } = useHouse();
  const back = () => { go({ view: 'reports' }); };
  useKey('Escape', back);
  return (
    <View over="Of this laboratory or of another one" title="Check a report" actions={<><Button onPress={() => { go({ view: 'bundles' }); }}>Bundles taken in</Button><Button kind="quiet" keys="Escape" onPress={back}>Reports</Button></>}>
      <div className="page page-sheet"><CheckReport zone={laboratory.zone} mayTakeIn={me?.roles.includes('manager') ?? false} /></div>
    </View>
  );
}
