//! What a job costs and what is charged for it, in whole minor units of the shop's currency.

pub mod change_note;
pub mod job_cost;
pub mod labour;
pub mod margin;
pub mod margin_of_markup;
pub mod order_quantity;
pub mod site_waste;
pub mod stage_payments;
