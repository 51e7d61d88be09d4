//! Mathematics that knows no body: splines, roots, integration, linear programmes.
