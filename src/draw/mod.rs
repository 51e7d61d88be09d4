//! Pictures that know no body: scene, scales, lettering, SVG and PNG.
