import { Component, type ReactNode } from 'react';
import { words } from './words.ts';

/** A fault of the program on one page leaves the rail and the other pages standing. */
export class FaultBoundary extends Component<{ readonly children: ReactNode }, { readonly stopped: boolean }> {
  override state = { stopped: false };

  static getDerivedStateFromError(): { stopped: boolean } {
    return { stopped: true };
  }

  override render(): ReactNode {
    if (!this.state.stopped) return this.props.children;
    return (
      <div className="page">
        <div className="fault-note" role="alert">
          <p>{words.stopped}</p>
        </div>
        <button type="button" onClick={() => this.setState({ stopped: false })}>
          {words.again}
        </button>
      </div>
    );
  }
}
