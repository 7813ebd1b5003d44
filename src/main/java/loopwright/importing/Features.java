package loopwright.importing;

import loopwright.calibration.Calibrations;
import loopwright.loop.Configuration;
import loopwright.plant.Channels;
import loopwright.plant.Plant;
import loopwright.register.FamilyBook;
import loopwright.register.Register;
import loopwright.register.ToleranceProfiles;
import loopwright.standard.Standards;

/** The features whose records files become. */
public record Features(
    FamilyBook families,
    ToleranceProfiles profiles,
    Register register,
    Plant plant,
    Channels channels,
    Configuration configuration,
    Calibrations calibrations,
    Standards standards) {}
