import { Component, type ReactNode } from 'react';
import { Button } from '../look/button.tsx';
import { Trouble } from '../look/empty.tsx';
import { View } from './view.tsx';

type Props = { /** Of what is shown; another place is tried anew. */ readonly place: string; readonly children: ReactNode };
type State = { readonly place: string; readonly fault: string | null };

/**
 * Catches what goes wrong while a view is fetched or drawn, and says so in its place: without this the whole window would go blank, with the
 * rooms and the person at the window. The library offers this to classes alone.
 */
export class FallenView extends Component<Props, State> {
  override state: State = { place: this.props.place, fault: null };

  static getDerivedStateFromError(fault: unknown): Partial<State> {
    return { fault: fault instanceof Error ? fault.message : String(fault) };
  }

  static getDerivedStateFromProps(props: Props, state: State): Partial<State> | null {
    return props.place === state.place ? null : { place: props.place, fault: null };
  }

  override render(): ReactNode {
    if (this.state.fault === null) return this.props.children;
    return (
      <View title="This page can’t be shown" actions={<Button kind="main" autoFocus onPress={() => { window.location.reload(); }}>Load the window anew</Button>}>
        <div className="page page-sheet"><Trouble message={`Something went wrong while the window drew it: ${this.state.fault}`} next="What was kept is safe in the casebook. Load the window anew, or go on in another room; if it happens again, close Culet and start it once more." /></div>
      </View>
    );
  }
}
