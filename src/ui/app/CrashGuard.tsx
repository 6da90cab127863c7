/** When a part of the page breaks, the rest stays, the plan stays, and a person is told so. */
import { Component, type ReactNode } from "react";

interface GuardProps {
  /** Shown instead, with a way to try again. */
  readonly instead: (again: () => void, error: Error) => ReactNode;
  readonly children: ReactNode;
}

export class CrashGuard extends Component<GuardProps, { error: Error | null }> {
  override state: { error: Error | null } = { error: null };

  static getDerivedStateFromError(error: Error) {
    return { error };
  }

  override render() {
    const { error } = this.state;
    return error ? this.props.instead(() => this.setState({ error: null }), error) : this.props.children;
  }
}
