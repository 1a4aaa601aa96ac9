import { TELL_BOTH } from '../../garment/index.ts';
import { tellTrouble } from '../words/fault.ts';
import { Component, type ReactNode } from 'react';

/** Catches what we did wrong, once, at the edge: the documents are on disk already, and the other stations still work. */
export class Boundary extends Component<{ children: ReactNode }, { error: Error | null }> {
  override state: { error: Error | null } = { error: null };

  static getDerivedStateFromError(error: Error) {
    return { error };
  }

  override render() {
    const { error } = this.state;
    if (!error) return this.props.children;
    return (
      <div className="sheet stack" role="alert">
        <h1>This page stumbled</h1>
        <p>Everything you entered is kept; the other stations still work.</p>
        <p className="small">{tellTrouble(error, TELL_BOTH)}</p>
        <button className="act main" type="button" onClick={() => this.setState({ error: null })}>
          Try once more
        </button>
      </div>
    );
  }
}
