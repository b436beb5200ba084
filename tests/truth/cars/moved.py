"""From workshop coordinates to the frame of a build."""

import numpy as np


def to_build_frame(places, ports, setups, origin_mark):
    """Origin at the mark in x and z; y stays from the middle plane."""
    origin = np.array([places[origin_mark][0], 0.0, places[origin_mark][2]], float)
    floors = {}
    for name, (up, floor) in setups.items():
        up = np.array(up, float) / np.linalg.norm(up)
        floors[name] = (up, float(up @ (np.array(floor, float) - origin)))
    return {
        "origin": origin,
        "places": {k: np.array(v, float) - origin for k, v in places.items()},
        "ends": {k: (np.array(c, float) - origin, t) for k, (c, t) in ports.items()},
        "setups": floors,
    }


def down(pitch_deg, yaw_deg=0.0):
    """A direction of travel: rearwards, turned to the right by the yaw, then down by the pitch."""
    p, y = np.radians([pitch_deg, yaw_deg])
    return np.array([np.cos(p) * np.cos(y), np.cos(p) * np.sin(y), -np.sin(p)])
