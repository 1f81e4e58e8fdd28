//! The patterns met so far: what can be cut from one stick of a kind.

/// Pieces cut from one stick: (size index, how many), size indices rising.
pub(super) type Pattern = Vec<(u16, u16)>;

/// All patterns met, packed end to end so that going through them is going through memory.
///
/// Most soon stop mattering: those in view are gone through, the others are only kept for the blends that hold them.
#[derive(Clone, Debug, Default)]
pub(super) struct Pool {
    kinds: Vec<u16>,
    ends: Vec<u32>,
    pieces: Vec<(u16, u16)>,
    in_view: Vec<u32>,
}

impl Pool {
    /// How many patterns there are.
    pub(super) fn len(&self) -> usize {
        self.kinds.len()
    }

    /// Adds a pattern, in view, and gives its index.
    pub(super) fn add(&mut self, kind: usize, pattern: &[(u16, u16)]) -> usize {
        self.kinds.push(kind as u16);
        self.pieces.extend_from_slice(pattern);
        self.ends.push(self.pieces.len() as u32);
        self.in_view.push(self.kinds.len() as u32 - 1);
        self.kinds.len() - 1
    }

    /// The stick kind of a pattern.
    pub(super) fn kind(&self, column: usize) -> usize {
        usize::from(self.kinds[column])
    }

    /// The pieces of a pattern.
    pub(super) fn pattern(&self, column: usize) -> &[(u16, u16)] {
        let start = if column == 0 { 0 } else { self.ends[column - 1] as usize };
        &self.pieces[start..self.ends[column] as usize]
    }

    /// The worth of a pattern at these values per size.
    pub(super) fn worth(&self, column: usize, values: &[f64]) -> f64 {
        let mut worth = 0.0;
        for &(size, count) in self.pattern(column) {
            worth += values[usize::from(size)] * f64::from(count);
        }
        worth
    }

    /// The patterns in view.
    pub(super) fn in_view(&self) -> &[u32] {
        &self.in_view
    }

    /// Takes into view the patterns with the least `reduced` weight, so many at most.
    pub(super) fn view(&mut self, most: usize, reduced: impl Fn(&Self, usize) -> f64) {
        if self.in_view.len() <= most {
            return;
        }
        let mut ranked: Vec<(f64, u32)> =
            self.in_view.iter().map(|&column| (reduced(self, column as usize), column)).collect();
        ranked.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        ranked.truncate(most);
        self.in_view.clear();
        self.in_view.extend(ranked.into_iter().map(|(_, column)| column));
        self.in_view.sort_unstable();
    }
}
