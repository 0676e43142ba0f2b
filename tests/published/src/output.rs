//! What may be printed: its name in a document, and what a reader calls it.

macro_rules! outputs {
    ($($(#[doc = $about:literal])* $output:ident: $name:literal $(, $words:literal)?;)*) => {
        /// What may be printed.
        #[derive(Clone, Copy, PartialEq, Eq)]
        pub(crate) enum Output {
            $($(#[doc = $about])* $output,)*
        }

        impl Output {
            pub(crate) const ALL: [Self; NAMES.len()] = [$(Self::$output),*];
        }

        /// Each name in a document, in the order of the outputs.
        pub(crate) const NAMES: &[&str] = &[$($name),*];

        /// The same in words, where the name says too little.
        const WORDS: &[&str] = &[$(concat!($($words)?)),*];
    };
}

outputs! {
    Mean: "mean", "mean diameter";
    Outside: "outside", "outside diameter";
    Inside: "inside", "inside diameter";
    Index: "index";
    ActiveTurns: "active-turns";
    TotalTurns: "total-turns";
    Solid: "solid", "solid height";
    Pitch: "pitch";
    Rate: "rate";
    Wahl: "wahl", "Wahl factor";
    Bergstrasser: "bergstrasser", "Bergsträsser factor";
    /// How far Bergsträsser's factor lies below Wahl's, as a share of Wahl's.
    BergstrasserBelowWahl: "bergstrasser-below-wahl", "Bergsträsser factor below Wahl factor";
    Load: "load";
    Deflection: "deflection";
    /// Free height: solid and the deflection at the load.
    FreeForLoad: "free-for-load", "free height for the load";
    /// Load that closes the coil from its free height.
    LoadToSolid: "load-to-solid";
    Stress: "stress";
    StressWahl: "stress-wahl", "stress with Wahl factor";
    StressBergstrasser: "stress-bergstrasser", "stress with Bergsträsser factor";
    Slenderness: "slenderness";
    /// Free height up to which it never buckles.
    StableFree: "stable-free";
    /// Deflection at which it buckles.
    Buckles: "buckles";
    LateralOverAxial: "lateral-over-axial";
    LeastGaps: "least-gaps";
    /// Between two turns, at the load.
    GapBetweenTurns: "gap-between-turns";
    ClashAllowance: "clash-allowance";
    Allowable: "allowable";
    SafetyAgainstSet: "safety-against-set";
    ActiveMass: "active-mass";
    FirstFrequency: "first-frequency";
    StressAmplitude: "stress-amplitude";
    StressMean: "stress-mean";
    TorsionalUltimate: "torsional-ultimate";
    ReversedGoodman: "reversed-goodman";
    ReversedGerber: "reversed-gerber";
    AmplitudeGoodman: "amplitude-goodman";
    AmplitudeGerber: "amplitude-gerber";
    SafetyGoodman: "safety-goodman";
    SafetyGerber: "safety-gerber";
    SafetySines: "safety-sines";
    /// Of each coil of a nest.
    Loads: "loads", "load";
    Deflections: "deflections", "deflection";
    StressesWahl: "stresses-wahl", "stress with Wahl factor";
    PermissibleError: "permissible-error";
    /// Without what the class adds for the tape's end.
    PermissibleErrorFromZero: "permissible-error-from-zero";
    StandardUncertainty: "standard-uncertainty";
    ExpandedUncertainty: "expanded-uncertainty";
    Estimate: "estimate";
    ProbabilityIn: "probability-in", "probability within the limits";
    ProbabilityBelow: "probability-below", "probability below the limits";
    ProbabilityAbove: "probability-above", "probability above the limits";
    InSi: "in-si", "one in SI units";
    ShearModulus: "shear-modulus";
    YoungsModulus: "youngs-modulus";
    Density: "density";
    TensileStrength: "tensile-strength";
    /// What may be borne in torsion once the set is removed.
    AllowableSetRemoved: "allowable-set-removed";
    LoadTolerance: "load-tolerance";
    FreeTolerance: "free-tolerance";
    DiameterTolerance: "diameter-tolerance";
    Squareness: "squareness";
    Parallelism: "parallelism";
    /// In degrees.
    SquarenessAngle: "squareness-angle";
    /// In degrees.
    ParallelismAngle: "parallelism-angle";
}

impl Output {
    pub(crate) fn read(name: &str) -> Result<Self, String> {
        let found = Self::ALL.into_iter().find(|output| output.name() == name);
        found.ok_or_else(|| format!("nothing is printed by the name of {name:?}"))
    }

    pub(crate) fn name(self) -> &'static str {
        NAMES.get(self as usize).copied().unwrap_or_default()
    }

    /// What a reader calls it.
    pub(crate) fn words(self) -> String {
        match WORDS.get(self as usize) {
            Some(words) if !words.is_empty() => (*words).into(),
            _ => self.name().replace('-', " "),
        }
    }
}
