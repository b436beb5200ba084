//! What a quantity promises once it is read: any text goes to every parser there is.

use crate::{Broken, promise};
use tubewright_build::quantity::{
    QuantityError, parse_angle, parse_clock, parse_dash_size, parse_density, parse_duration,
    parse_flow, parse_length, parse_mass, parse_money, parse_power, parse_pressure,
    parse_rotation_speed, parse_share, parse_speed, parse_temperature,
    parse_temperature_difference, parse_thread, parse_torque, parse_tyre, parse_volume, write_deg,
    write_inches, write_mm,
};

pub(crate) fn quantity(bytes: &[u8]) -> Result<(), Broken> {
    // The file that a quantity stands in is refused before when it is no text.
    let Ok(text) = core::str::from_utf8(bytes) else {
        return Ok(());
    };
    length(text)?;
    angle(text)?;
    finite(text, parse_mass(text), |mass| mass.kg())?;
    finite(text, parse_volume(text), |volume| volume.litres())?;
    finite(text, parse_flow(text), |flow| flow.litres_per_minute())?;
    finite(text, parse_power(text), |power| power.kw())?;
    finite(text, parse_torque(text), |torque| torque.nm())?;
    finite(text, parse_speed(text), |speed| speed.km_per_hour())?;
    finite(text, parse_rotation_speed(text), |speed| {
        speed.rev_per_minute()
    })?;
    finite(text, parse_duration(text), |time| time.minutes())?;
    finite(text, parse_density(text), |density| density.kg_per_m3())?;
    finite(text, parse_share(text), |share| share.fraction())?;
    finite(text, parse_pressure(text), |pressure| {
        pressure.absolute_kpa(101.325)
    })?;
    finite(text, parse_temperature(text), |t| t.kelvin())?;
    finite(text, parse_temperature_difference(text), |t| t.kelvin())?;
    finite(text, parse_money(text), |money| money.major())?;
    finite(text, parse_dash_size(text), |dash| dash.nominal_bore().mm())?;
    finite(text, parse_thread(text), |_| 0.0)?;
    finite(text, parse_tyre(text), |tyre| {
        tyre.width.mm() + tyre.diameter.mm() + tyre.rim.mm()
    })
}

fn length(text: &str) -> Result<(), Broken> {
    let read = parse_length(text);
    let Ok(length) = read else {
        return finite(text, read, |length| length.mm());
    };
    promise(
        length.mm().is_finite() && length.mm().abs() <= 100_000.0,
        "a length is finite and no longer than 100 m",
        || format!("{text:?} is {length:?}"),
    )?;
    let written = write_mm(length, 9);
    promise(
        parse_length(&written).is_ok_and(|again| (again.mm() - length.mm()).abs() <= 1e-9),
        "a length that is written in millimetres is read again as the same",
        || format!("{text:?} is {length:?}, written {written:?}"),
    )?;
    let written = write_inches(length, 64);
    // Half a sixty-fourth of an inch, and what a double has at 100 m.
    let half_step_mm = 25.4 / 128.0 + 1e-9;
    promise(
        length.mm().abs() > 99_999.0
            || parse_length(&written)
                .is_ok_and(|again| (again.mm() - length.mm()).abs() <= half_step_mm),
        "a length that is written in sixty-fourths is read again within half a step",
        || format!("{text:?} is {length:?}, written {written:?}"),
    )
}

fn angle(text: &str) -> Result<(), Broken> {
    finite(text, parse_clock(text), |clock| clock.angle().rad())?;
    let read = parse_angle(text);
    let Ok(angle) = read else {
        return finite(text, read, |angle| angle.rad());
    };
    let written = write_deg(angle, 12);
    promise(
        angle.rad().is_finite()
            && parse_angle(&written).is_ok_and(|again| (again.deg() - angle.deg()).abs() <= 1e-9),
        "an angle that is written in degrees is read again as the same",
        || format!("{text:?} is {angle:?}, written {written:?}"),
    )
}

fn finite<T>(
    text: &str,
    read: Result<T, QuantityError>,
    value: impl Fn(&T) -> f64,
) -> Result<(), Broken> {
    match read {
        Ok(quantity) => promise(
            value(&quantity).is_finite(),
            "what is read is a finite number",
            || format!("{text:?} is {}", value(&quantity)),
        ),
        Err(refusal) => promise(
            !refusal.to_string().is_empty()
                && !refusal.why().is_empty()
                && !refusal.do_this().is_empty(),
            "a refusal says what, why and what to type",
            || format!("{text:?}: {refusal:?}"),
        ),
    }
}
