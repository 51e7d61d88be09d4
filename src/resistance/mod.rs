//! What hangs on the bar: the law of every implement and the complete setup.
