//! The scheme of a method, as it is asked for; what does not hold is lowered elsewhere.
//!
//! In: a [`SessionRequest`]. Out: its [`Draft`].

use super::draft::Draft;
use super::method::Method;
use super::request::SessionRequest;
use super::{accommodating, clusters, overload, pyramid, straight};
use crate::error::Result;

/// The draft of a scheme.
///
/// **Fails** as the scheme does.
pub(super) fn drafted(request: &SessionRequest) -> Result<Draft> {
    match request.method {
        Method::Straight => straight::draft(request),
        Method::Pyramid => pyramid::draft(request),
        Method::Clusters => clusters::draft(request),
        Method::OverloadedLowering => overload::draft(request, overload::window(request)),
        Method::Bands | Method::Chains => accommodating::draft(request),
    }
}
